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
const PLACE = /^\/assets\/place-/;
const TEXT = /^\/assets\/(?:place-)?text-([a-z]+)/;
/** What a first visit does not wait for: the places beside the bench, the texts of other languages, the invented shop, and what
 * the browser has just fetched for itself. */
const LATER = /^\/(?:assets\/(?:place-|text-|demo_shop)[^/]*\.(?:js|css|mpy)|manifest\.webmanifest|icon\.svg)$/;
/** What is fetched when somebody first wants it, and kept then. */
const ON_DEMAND = /^\/assets\/scan-/;
const KEPT = "amberbench-on-demand";
const languages = files.flatMap(({ path }) => TEXT.exec(path)?.[1] ?? []);
/** With its variants: they are small, and which of them is read only the page knows. */
const language = navigator.languages.map((one) => one.split("-")[0]).find((one) => one && languages.includes(one)) ?? "en";
const isOfAnother = (path: string) => TEXT.test(path) && TEXT.exec(path)?.[1] !== language;
/** Without these nothing works without a network. */
const first = files.filter(({ path }) => !LATER.test(path) || (TEXT.test(path) && !PLACE.test(path) && !isOfAnother(path)));
/** Without these not every screen does: they come as soon as the bench is stored. */
const needed = files.filter((file) => first.includes(file) || (PLACE.test(file.path) && !isOfAnother(file.path)));
/** The rest begins so long after the page has asked for it: the first visit still fetches what it shows (ms). */
const REST_AFTER_MS = 3_000;
/** Holds the ids of the pages that were open when this version took over: they still ask for the files of the one before. */
const OLD_PAGES = "/pages-of-the-version-before";
/** The name changes with whatever is in it. */
const CACHE = PREFIX + digest(files.map(({ path, revision }) => `${path}?${revision ?? ""}`).join("\n"));

/** FNV-1a, 32 bits, public domain. */
function digest(text: string): string {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return (hash >>> 0).toString(16);
}

/** All of them or none: a worker that could not store everything is never installed. A first visit stores what this phone
 * needs to work without a network, an update everything there is: the reader may have chosen another language. */
async function install(): Promise<void> {
  const before = (await caches.keys()).filter((name) => name.startsWith(PREFIX) && name !== CACHE);
  await store(before.length ? files : first);
}

async function store(wanted: typeof files): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(wanted.map((file) => storeOne(cache, file)));
}

/** What is still missing after a first visit; says when every screen works without a network. A page that hears nothing asks again. */
async function storeTheRest(page: Client | null): Promise<void> {
  await store(needed);
  page?.postMessage({ type: "stored" });
  await new Promise((done) => setTimeout(done, REST_AFTER_MS));
  await store(files);
}

async function storeOne(cache: Cache, { path, revision }: { path: string; revision: string | null }): Promise<void> {
  if (await cache.match(path)) return;
  // A file with a hash in its name never changes: take it from the cache of the version before, if it is there.
  const had = revision === null ? await caches.match(path) : undefined;
  const response = had ?? (await fetch(path, { cache: revision === null ? "default" : "reload" }));
  if (!response.ok || response.redirected) throw new Error(`${path}: ${response.status}`);
  await cache.put(path, response);
}

async function openPages(): Promise<string[]> {
  return (await self.clients.matchAll({ type: "window", includeUncontrolled: true })).map(({ id }) => id);
}

/** Before this version answers: who is open now belongs to the one before. */
async function noteOldPages(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.put(OLD_PAGES, new Response(JSON.stringify(await openPages())));
}

/** The files of a version before go when no page of it is open any more: until then it may still ask for a screen. */
async function forgetOld(): Promise<void> {
  const noted = await (await caches.open(CACHE)).match(OLD_PAGES);
  if (!noted) return;
  const [old, open] = await Promise.all([noted.json() as Promise<string[]>, openPages()]);
  if (open.some((id) => old.includes(id))) return;
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)));
}

/** Keeps a file instead of the one of an earlier version: they differ in the hash behind the last hyphen. */
async function keep(path: string, response: Response): Promise<void> {
  const cache = await caches.open(KEPT);
  const kind = (one: string) => one.replace(/-[^-.]+\./, ".");
  for (const { url } of await cache.keys()) if (kind(new URL(url).pathname) === kind(path)) await cache.delete(url);
  await cache.put(path, response);
}

async function answer(request: Request, path: string): Promise<Response> {
  const cache = await caches.open(CACHE);
  // What this version does not know is asked for by a page of the one before.
  const kept = await (known.has(path) ? cache : caches).match(path);
  if (kept) return kept;
  const response = await fetch(request);
  if (response.ok && ON_DEMAND.test(path)) await keep(path, response.clone());
  // Wanted before the rest was stored: a language just chosen must be here without a network, too.
  if (response.ok && known.has(path) && LATER.test(path)) await cache.put(path, response.clone());
  return response;
}

self.addEventListener("install", (event) => event.waitUntil(install()));

self.addEventListener("activate", (event) => event.waitUntil(noteOldPages().then(forgetOld).then(() => self.clients.claim())));

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== "GET" || url.origin !== self.location.origin) return;
  if (url.pathname === NOTICES || url.pathname === "/api" || url.pathname.startsWith("/api/")) return;
  if (request.mode === "navigate") event.respondWith(answer(request, SHELL));
  else if (known.has(url.pathname) || url.pathname.startsWith("/assets/")) event.respondWith(answer(request, url.pathname));
});

// A new version waits until the page says so: never under someone's hands.
self.addEventListener("message", (event) => {
  const { type } = (event.data ?? {}) as { type?: string };
  if (type === "skip-waiting") void self.skipWaiting();
  if (type === "store-the-rest") event.waitUntil(Promise.all([forgetOld(), storeTheRest(event.source as Client | null).catch(() => {})]));
});
