// @vitest-environment node
import "fake-indexeddb/auto";
import { afterEach, beforeEach, expect, test, vi } from "vitest";

import { openStore, type Store, uuid7 } from "../storage";
import { httpPhotos, type PhotoApi, Refusal, Unreachable } from "./api";
import { sendPhotos } from "./photos";

const T0 = 1_790_000_000_000;
let names = 0;
let store: Store;

beforeEach(async () => {
  store = await openStore(T0, `photos-${++names}`);
});
afterEach(() => vi.unstubAllGlobals());

async function take(): Promise<string> {
  const id = uuid7(T0);
  const draft = { id: uuid7(T0), shop_id: "shop", stream: "batch/a" as const, kind: "photographed", body: {}, at_ms: T0, offset_ms: 0 };
  await store.events.appendPhoto(draft, { id, blob: new Blob([id]) });
  return id;
}

/** A server that fails by photo, and remembers what it was sent. */
function server(fault: (id: string) => Error | null = () => null): PhotoApi & { had: Map<string, string> } {
  const had = new Map<string, string>();
  return {
    had,
    async send(id, blob) {
      const error = fault(id);
      if (error) throw error;
      had.set(id, await blob.text());
    },
    photo: () => Promise.reject(new Unreachable("not asked here")),
  };
}

test("every photo that waits is sent once, as it is", async () => {
  const ids = [await take(), await take()];
  const api = server();
  await sendPhotos(store, api, "0.1.0");
  await sendPhotos(store, server(() => new Error("nothing waits any more")), "0.1.0");
  expect([...api.had]).toEqual(ids.sort().map((id) => [id, id]));
  expect(await store.photos.unsentCount()).toBe(0);
  expect(await store.photos.get(ids[0] ?? "")).toBeDefined();
});

test("without a network the photos wait for the next exchange", async () => {
  await take();
  await sendPhotos(store, server(() => new Unreachable("off")), "0.1.0");
  expect(await store.photos.unsentCount()).toBe(1);
  await sendPhotos(store, server(), "0.1.0");
  expect(await store.photos.unsentCount()).toBe(0);
});

test("an older server that has no such endpoint is asked again later", async () => {
  await take();
  await sendPhotos(store, server(() => new Refusal(404, "refused")), "0.1.0");
  const api = server();
  await sendPhotos(store, api, "0.1.0");
  expect(api.had.size).toBe(1);
});

test.each([409, 413, 415, 422])("a photo refused with %s holds up no other, and is offered to another version only", async (status) => {
  const ids = [await take(), await take()].sort();
  const asked: string[] = [];
  const picky = server((id) => {
    asked.push(id);
    return id === ids[0] ? new Refusal(status, "refused") : null;
  });
  await sendPhotos(store, picky, "0.1.0");
  await sendPhotos(store, picky, "0.1.0");
  expect(asked).toEqual(ids);
  expect(await store.photos.unsentCount()).toBe(1);
  await sendPhotos(store, server(), "0.2.0");
  expect(await store.photos.unsentCount()).toBe(0);
});

test("a photo is put to its own address as JPEG, and read from there", async () => {
  const asked: [string, RequestInit][] = [];
  vi.stubGlobal("fetch", (path: string, init: RequestInit) => {
    asked.push([path, init]);
    return Promise.resolve(init.method === "PUT" ? new Response(null, { status: 204 }) : new Response("picture"));
  });
  await httpPhotos.send("a/b", new Blob(["x"]));
  expect(await (await httpPhotos.photo("c")).text()).toBe("picture");
  expect(asked.map(([path, { method }]) => [path, method])).toEqual([
    ["/api/photos/a%2Fb", "PUT"],
    ["/api/photos/c", undefined],
  ]);
  expect(asked[0]?.[1].headers).toEqual({ "content-type": "image/jpeg" });
});

test.each([
  [404, Refusal],
  [503, Unreachable],
])("an answer of %s is no photo", async (status, kind) => {
  vi.stubGlobal("fetch", () => Promise.resolve(new Response("{}", { status })));
  await expect(httpPhotos.photo("c")).rejects.toThrow(kind);
});
