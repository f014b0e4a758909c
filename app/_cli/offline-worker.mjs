/**
 * The text of the worker that keeps a copy of the whole site on the device: `version` names the copy, `paths` are the files in it.
 * It reads no file of the project, so that it can be tried against a network that fails.
 */
export const offlineWorker = (version, paths) => `'use strict';
const NAME = 'leeward-${version}';
const KEPT = ${JSON.stringify(paths)};
// A few at a time, so that the page in front comes first; what arrived stays when the rest fails, and the next visit goes on from there.
const AT_ONCE = 3;
async function keepAll() {
  const cache = await caches.open(NAME);
  const had = new Set((await cache.keys()).map((request) => new URL(request.url).pathname));
  const wanted = KEPT.filter((path) => !had.has(path));
  const keepOn = async () => { for (let path = wanted.shift(); path !== undefined; path = wanted.shift()) await keep(cache, path); };
  await Promise.all(Array.from({ length: AT_ONCE }, keepOn));
}
async function keep(cache, path) {
  // A name under /_next/static/ carries a digest of what is in it: an older copy may have it already.
  const older = path.startsWith('/_next/static/') ? await caches.match(path, { ignoreVary: true }) : undefined;
  const response = older ?? await fetch(new Request(path, { cache: 'no-cache' }));
  if (!response.ok) throw new Error('the copy of ' + path + ' was answered with ' + response.status);
  await cache.put(path, response);
}
self.addEventListener('install', (event) => event.waitUntil(keepAll()));
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
`;
