// Answers for the page when there is no network. One cache holds one whole
// version: all of it is fetched or none, and a new version is served only after
// the page that shows the old one has said "skip" or is closed.

/** Set by the build. @type {{version: string, files: string[]}} */
const { version, files } = SITE;
const worker = /** @type {ServiceWorkerGlobalScope} */ (/** @type {unknown} */ (self));

// Two sites of one host share its caches: the path tells ours from theirs.
const scope = new URL(worker.registration.scope);
const ours = `twoleaf:${scope.pathname}:`;
const cacheName = ours + version;
const home = scope.href;
const pages = [home, new URL('index.html', scope).href];

worker.addEventListener('install', (event) => event.waitUntil(fetchAll()));

async function fetchAll() {
  const cache = await caches.open(cacheName);
  const requests = files.map((file) => {
    // A name that carries its content's hash cannot be stale; the others must come from the server itworker.
    const named = /-[0-9a-f]{10}\.\w+$/.test(file);
    return new Request(new URL(file, scope), { cache: named ? 'default' : 'reload' });
  });
  try {
    await cache.addAll(requests);
  } catch (reason) {
    await caches.delete(cacheName);
    throw reason;
  }
}

worker.addEventListener('activate', (event) => event.waitUntil(takeOver()));

async function takeOver() {
  for (const name of await caches.keys()) {
    if (name.startsWith(ours) && name !== cacheName) await caches.delete(name);
  }
  await worker.clients.claim();
}

worker.addEventListener('message', (event) => {
  if (event.data === 'skip') worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== 'GET' || url.origin !== scope.origin) return;
  const page = url.origin + url.pathname;
  if (event.request.mode === 'navigate' && !pages.includes(page)) return;
  event.respondWith(answer(event.request, pages.includes(page) ? home : page));
});

/**
 * @param {Request} request
 * @param {string} key
 */
async function answer(request, key) {
  const cache = await caches.open(cacheName);
  return (await cache.match(key)) ?? fetch(request);
}
