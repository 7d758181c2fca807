// Keeps the page for use without a signal: all files of one build together, never some of two. A newer build is fetched beside
// it and waits until the user agrees to it, or until no page of the older one is open.

importScripts("service-worker-assets.js");

const kept = "underturf-build-";
const build = kept + self.assetsManifest.version;
const page = new URL("index.html", self.location).href;

self.addEventListener("install", (event) => event.waitUntil(keepAll()));
self.addEventListener("activate", (event) => event.waitUntil(forgetOlder()));
self.addEventListener("message", ({ data }) => data === "take over" && self.skipWaiting());
self.addEventListener("fetch", (event) => {
  if (event.request.method === "GET" && new URL(event.request.url).origin === self.location.origin) {
    event.respondWith(own(event.request));
  }
});

async function keepAll() {
  const cache = await caches.open(build);
  const files = self.assetsManifest.assets.filter(({ url }) => !url.startsWith("service-worker"));
  await cache.addAll(files.map(({ url, hash }) => new Request(url, { integrity: hash, cache: "no-cache" })));
}

async function forgetOlder() {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(kept) && name !== build).map((name) => caches.delete(name)));
  await self.clients.claim();
}

/** A file of this build; whatever is navigated to is the page. */
async function own(request) {
  const cache = await caches.open(build);
  const file = await cache.match(request.mode === "navigate" ? page : request, { ignoreSearch: true });
  return file ?? fetch(request);
}
