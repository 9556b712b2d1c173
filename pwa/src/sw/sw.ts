/// <reference lib="webworker" />
/** Stores the app shell and answers from it. No business data, nothing of the API, no step ahead of the person. */
export {};

declare const self: ServiceWorkerGlobalScope & { __WB_MANIFEST: { url: string; revision: string | null }[] };

const PREFIX = "amberbench-shell-";
const SHELL = "/index.html";
/** Asked of the server each time: seldom read, and no part of the work without a network. */
const NOTICES = "/notices.txt";
const files = self.__WB_MANIFEST.map(({ url, revision }) => ({ path: new URL(url, self.location.origin).pathname, revision }));
const known = new Set(files.map(({ path }) => path));
/** The name changes with whatever is in it. */
const CACHE = PREFIX + digest(files.map(({ path, revision }) => `${path}?${revision ?? ""}`).join("\n"));

/** FNV-1a, 32 bits, public domain. */
function digest(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16);
}

/** All files or none: a worker that could not store everything is never installed. */
async function store(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(files.map((file) => storeOne(cache, file)));
}

async function storeOne(cache: Cache, { path, revision }: { path: string; revision: string | null }): Promise<void> {
  if (await cache.match(path)) return;
  // A file with a hash in its name never changes: take it from the cache of the version before, if it is there.
  const had = revision === null ? await caches.match(path) : undefined;
  const response = had ?? (await fetch(path, { cache: revision === null ? "default" : "reload" }));
  if (!response.ok || response.redirected) throw new Error(`${path}: ${response.status}`);
  await cache.put(path, response);
}

async function forgetOld(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
}

async function answer(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(path)) ?? fetch(request);
}

self.addEventListener("install", (event) => event.waitUntil(store()));

self.addEventListener("activate", (event) => event.waitUntil(forgetOld().then(() => self.clients.claim())));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (url.pathname === NOTICES || url.pathname === "/api" || url.pathname.startsWith("/api/")) return;
  if (request.mode === "navigate") event.respondWith(answer(request, SHELL));
  else if (known.has(url.pathname)) event.respondWith(answer(request, url.pathname));
});

// A new version waits until the page says so: never under someone's hands.
self.addEventListener("message", (event) => {
  if ((event.data as { type?: string } | null)?.type === "skip-waiting") void self.skipWaiting();
});
