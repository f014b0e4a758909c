// Serves the finished export on this machine only.
import { createReadStream, existsSync, readFileSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, normalize } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';
import { root } from './setup.mjs';

const out = join(root, 'out');
const TYPES = { '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8', '.json': 'application/json; charset=utf-8', '.svg': 'image/svg+xml', '.woff2': 'font/woff2', '.txt': 'text/plain; charset=utf-8', '.webmanifest': 'application/manifest+json', '.png': 'image/png' };
const HEADERS = { 'X-Content-Type-Options': 'nosniff', 'Referrer-Policy': 'no-referrer', 'Cross-Origin-Opener-Policy': 'same-origin', 'Cross-Origin-Resource-Policy': 'same-origin', 'Content-Security-Policy': "frame-ancestors 'none'", 'Permissions-Policy': 'camera=(), geolocation=(), microphone=(self)' };
const squeezed = new Map();

/** Starts the server on loopback; resolves with its address. */
export function serve(port) {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? '/', 'http://x').pathname));
    if (path.includes('..') || !['GET', 'HEAD'].includes(request.method ?? '')) return answer(request, response, 404, join(out, '404.html'));
    const file = join(out, path);
    if (existsSync(file) && statSync(file).isDirectory()) {
      if (!path.endsWith('/')) { response.writeHead(308, { Location: `${path}/` }); return response.end(); }
      return existsSync(join(file, 'index.html')) ? answer(request, response, 200, join(file, 'index.html')) : answer(request, response, 404, join(out, '404.html'));
    }
    return existsSync(file) ? answer(request, response, 200, file) : answer(request, response, 404, join(out, '404.html'));
  });
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, '127.0.0.1', () => resolve({ server, address: `http://127.0.0.1:${server.address().port}/` }));
  });
}

function answer(request, response, status, file) {
  const type = TYPES[extname(file)] ?? 'application/octet-stream';
  const headers = { ...HEADERS, 'Content-Type': type, 'Cache-Control': file.includes('/_next/static/') ? 'public, max-age=31536000, immutable' : 'no-cache' };
  const worthIt = !/woff2|png/.test(type) && /\bbr\b/.test(request.headers['accept-encoding'] ?? '');
  if (!worthIt) {
    response.writeHead(status, headers);
    return request.method === 'HEAD' ? response.end() : createReadStream(file).pipe(response);
  }
  const key = `${file} ${statSync(file).mtimeMs}`;
  const body = squeezed.get(key) ?? brotliCompressSync(readFileSync(file), { params: { [constants.BROTLI_PARAM_QUALITY]: 5 } });
  squeezed.set(key, body);
  response.writeHead(status, { ...headers, 'Content-Encoding': 'br', Vary: 'Accept-Encoding' });
  return response.end(request.method === 'HEAD' ? undefined : body);
}
