// Finishes the export: a strict content policy in every page, and the worker that keeps an offline copy.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './setup.mjs';

const out = join(root, 'out');
const files = readdirSync(out, { recursive: true, encoding: 'utf8' }).map((name) => join(out, name)).filter((path) => statSync(path).isFile());

// The bundler leaves raw sources of workers and maps beside their compiled form.
for (const path of files) if (/_next\/static\/media\/.*\.tsx?$|\.js\.map$/.test(path.replaceAll('\\', '/'))) rmSync(path);

for (const path of files.filter((each) => each.endsWith('.html'))) {
  const html = readFileSync(path, 'utf8');
  const hashes = new Set([...html.matchAll(/<script(?![^>]*\ssrc=)[^>]*>([\s\S]*?)<\/script>/g)].map((match) => `'sha256-${createHash('sha256').update(match[1]).digest('base64')}'`));
  const policy = [
    "default-src 'none'", `script-src 'self' ${[...hashes].join(' ')}`, "style-src 'self'", "img-src 'self' data:", "font-src 'self'",
    "connect-src 'self'", "worker-src 'self'", "manifest-src 'self'", "base-uri 'none'", "form-action 'self'",
  ].join('; ');
  writeFileSync(path, html.replace('<head>', `<head><meta http-equiv="Content-Security-Policy" content="${policy}"/>`));
}

// Everything a page needs, but not Next's five copies of each page's data: a hard navigation does without them.
const kept = files
  .filter((path) => !/\.txt$|\.map$|sw\.js$|\.tsx?$|\.leeward-built$/.test(path))
  .map((path) => `/${relative(out, path).replaceAll('\\', '/')}`)
  .map((path) => path.replace(/(^|\/)index\.html$/, '$1'))
  .sort();
const contents = createHash('sha256');
for (const path of kept) contents.update(path).update(readFileSync(join(out, path.endsWith('/') ? `${path}index.html` : path)));
const version = contents.digest('hex').slice(0, 16);

writeFileSync(join(out, 'sw.js'), `'use strict';
const NAME = 'leeward-${version}';
const KEPT = ${JSON.stringify(kept)};
self.addEventListener('install', (event) => event.waitUntil(caches.open(NAME).then((cache) => cache.addAll(KEPT.map((path) => new Request(path, { cache: 'no-cache' }))))));
self.addEventListener('activate', (event) => event.waitUntil(caches.keys().then((names) => Promise.all(names.filter((name) => name.startsWith('leeward-') && name !== NAME).map((name) => caches.delete(name)))).then(() => self.clients.claim())));
self.addEventListener('message', (event) => { if (event.data === 'use-new-version') self.skipWaiting(); });
self.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== location.origin) return;
  event.respondWith(caches.open(NAME).then((cache) => cache.match(event.request, { ignoreSearch: true, ignoreVary: true })).then((hit) => {
    // A stored response answers under its own address and loses the fragment that carries a worker's parameters.
    if (hit) return url.search || event.request.destination === 'worker' ? new Response(hit.body, { status: hit.status, headers: hit.headers }) : hit;
    return fetch(event.request).catch(() => event.request.mode === 'navigate' ? caches.match('/404.html', { ignoreVary: true }) : Response.error());
  }));
});
`);
console.log(`Finished ${files.filter((path) => path.endsWith('.html')).length} pages; offline copy of ${kept.length} files, version ${version}.`);
