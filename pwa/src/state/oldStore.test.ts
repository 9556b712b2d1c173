// @vitest-environment node
/** A phone whose store an older app wrote (version 3: no streams, nothing set aside) goes on with all it has. */
import "fake-indexeddb/auto";
import { signal } from "@preact/signals";
import { beforeAll, expect, test } from "vitest";

import type { BenchEvent, Shop } from "../documents";
import { openStore, type Store } from "../storage";
import { batchStream, streamOf } from "../streams";
import { realEngine } from "../testing/engine";
import { oldPhone } from "../testing/oldStore";
import old from "../testing/oldStore.json";
import { BatchBook } from "./batchBook";
import { refreshStreams } from "./streamFolders";
import { ShopBook } from "./shopBook";
import type { Compute } from "./types";

const BATCH = old.batches[0]!.batch_id;
const NOW = old.batches[0]!.opened_at_ms + 3_600_000;
let compute: Compute;
let names = 0;

beforeAll(async () => {
  compute = await realEngine();
}, 60_000);

/** The phone as it was left, opened by this app. */
async function phone() {
  const name = `old-${++names}`;
  await oldPhone(name);
  const store = await openStore(NOW, name);
  const shop = signal<Shop | null>(JSON.parse(JSON.stringify(old.meta.shop)) as Shop);
  const common = { store, compute, phoneNow: () => NOW, offsetMs: () => 0, shopId: () => shop.value?.id ?? "", engineVersion: () => "test" };
  const book = new BatchBook({ ...common, wrote: () => {} });
  const shopBook = new ShopBook({ ...common, byWhom: (body) => body, wrote: () => {} }, shop);
  for (const batchId of await book.load()) await book.refresh(batchId);
  await shopBook.refresh();
  return { store, shop, book, shopBook };
}

const ids = (events: BenchEvent[]) => events.map((event) => event.id);

async function everyStream(store: Store): Promise<Set<string>> {
  return new Set((await store.events.all()).map(streamOf));
}

test("it loses nothing, and every event is in a stream", async () => {
  const { store } = await phone();
  expect(ids(await store.events.all()).sort()).toEqual(old.events.map((row) => row.id).sort());
  const batches = new Set(old.events.flatMap(({ batch_id }) => (batch_id === null ? [] : [batchStream(batch_id)])));
  expect(await everyStream(store)).toEqual(new Set([...batches, `shop/${old.meta.shop.id}`]));
  expect(ids(await store.events.waiting(9))).toEqual(old.outbox.map((row) => row.id));
  expect(store.deviceId).toBe(old.meta.device_id);
});

test("its batch and its shop go on, without the event from far ahead that they had folded", async () => {
  const { store, shop, book, shopBook } = await phone();
  expect(shop.value?.ovens).toMatchObject([{ id: "o1", name: "Blue oven", rated_w: 950 }]);
  const running = book.batches.value.get(BATCH);
  expect(running).toMatchObject({ pending: false, failure: null, advice: { step: "burst" } });
  expect(running?.run?.last_at_ms).toBeLessThan(NOW);
  expect((await store.events.setAside()).map((event) => event.kind)).toEqual(["noted"]);
  const event = await book.write(BATCH, "burst_started", { seconds_s: 60, advised_s: 60 });
  await book.refresh(BATCH);
  expect([event.stream, event.batch_id, event.at_ms, event.seq]).toEqual([batchStream(BATCH), BATCH, NOW, old.meta.seq + 1]);
  await shopBook.write([{ doc: "ovens/o1", field: "rated_w", value: 1000, basis: "typed" }]);
  expect(shop.value?.ovens[0]?.rated_w).toBe(1000);
});

test("events of a stream that no book knows change nothing and are kept", async () => {
  const { store, book, shopBook } = await phone();
  const [one] = await store.events.all();
  const order = { ...one!, id: "01a", stream: "order/7", batch_id: null, kind: "order_taken", position: 99 };
  const touched = await store.events.mergePulled([order], { cursor: 99, cursor_mark: null });
  const before = book.batches.value;
  await refreshStreams({ batch: book, shop: shopBook }, touched);
  expect([...touched]).toEqual(["order/7"]);
  expect(book.batches.value).toBe(before);
  expect(ids(await store.events.eventsOf("order/7"))).toEqual(["01a"]);
});
