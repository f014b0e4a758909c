// Finishes the export: a strict content policy in every page, and the worker that keeps an offline copy.
import { createHash } from 'node:crypto';
import { readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { offlineWorker } from './offline-worker.mjs';
import { root } from './setup.mjs';

const out = join(root, 'out');
// Pictures for whoever reads the repository: no page shows them.
rmSync(join(out, 'readme'), { recursive: true, force: true });
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

writeFileSync(join(out, 'sw.js'), offlineWorker(version, kept));
console.log(`Finished ${files.filter((path) => path.endsWith('.html')).length} pages; offline copy of ${kept.length} files, version ${version}.`);
