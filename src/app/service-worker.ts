/**
 * Keeps the built app for work without network. The two words below are filled in when the app is built: the list of all files
 * and a digest of them. Each build has a store of its own; an older one is thrown away once the new one stands.
 */
const files = JSON.parse("BUILT_FILES") as readonly string[];
const store = `lastwise ${"BUILT_DIGEST"}`;
const sw = self as unknown as ServiceWorkerGlobalScope;

sw.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(store)
      .then((cache) => cache.addAll(files.map((f) => new Request(f, { cache: "reload" }))))
      .then(() => sw.skipWaiting()),
  );
});

sw.addEventListener("activate", (event) => {
  event.waitUntil(dropOlder().then(() => sw.clients.claim()));
});

sw.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== sw.location.origin) return;
  event.respondWith(answer(request));
});

async function dropOlder(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith("lastwise ") && name !== store) await caches.delete(name);
}

/** The kept file; for any other page the kept page; else the network. */
async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(store);
  const kept = await cache.match(request, { ignoreVary: true });
  return kept ?? (request.mode === "navigate" ? await cache.match("./") : undefined) ?? fetch(request);
}
