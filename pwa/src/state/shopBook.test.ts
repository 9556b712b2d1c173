import "fake-indexeddb/auto";

import { signal } from "@preact/signals";
import { beforeEach, expect, test } from "vitest";

import type { BenchEvent, Shop, ShopEdit, Values } from "../documents";
import { openStore, type Store } from "../storage";
import { realEngine } from "../testing/engine";
import type { Compute } from "./types";
import { ShopBook } from "./shopBook";

const T0 = Date.UTC(2026, 0, 5, 9);
let name = 0;
let compute: Compute;
let clock: number;

beforeEach(async () => {
  compute ??= await realEngine();
  clock = T0;
});

async function phone() {
  const store = await openStore(T0, `shop-${++name}`);
  const shop = signal<Shop | null>({ id: "shop" } as Shop);
  const parts = { store, compute, phoneNow: () => clock, offsetMs: () => 0, shopId: () => "shop", byWhom: (body: Values) => ({ ...body, by: "anna" }), wrote: () => {} };
  return { store, shop, book: new ShopBook(parts, shop) };
}

function edit(doc: string, field: string, value: unknown): ShopEdit {
  return { doc, field, value, basis: "typed" };
}

/** What the one has not sent comes to the other. */
async function sends(from: Store, to: { store: Store; book: ShopBook }): Promise<void> {
  const events: BenchEvent[] = await from.events.unsent();
  expect([...(await to.store.events.mergePulled(events, null))]).toEqual(["shop/shop"]);
  await to.book.refresh();
}

test("edits stand in the document and in the log as soon as they are written", async () => {
  const { store, shop, book } = await phone();
  await book.write([edit("ovens/a", "name", "Oven"), edit("ovens/a", "rated_w", 900)]);
  expect(shop.value?.ovens).toMatchObject([{ id: "a", name: "Oven", rated_w: 900, turntable: true }]);
  expect(await store.events.unsentCount()).toBe(2);
  expect((await store.meta.get<Shop>("shop"))?.ovens).toHaveLength(1);
});

test("an edit names the person at the phone", async () => {
  const { store, book } = await phone();
  await book.write([edit("ovens/a", "rated_w", 900)]);
  expect((await store.events.unsent())[0]?.body).toMatchObject({ field: "rated_w", by: "anna" });
});

test("an edit made in the same millisecond as another comes after it", async () => {
  const { shop, book } = await phone();
  await book.write([edit("ovens/a", "rated_w", 900), edit("ovens/a", "rated_w", 800)]);
  expect(shop.value?.ovens[0]?.rated_w).toBe(800);
});

test("an edit counts though this phone's clock has fallen behind", async () => {
  const { shop, book } = await phone();
  await book.write([edit("ovens/a", "rated_w", 900)]);
  clock = T0 - 3_600_000;
  await book.write([edit("ovens/a", "rated_w", 800)]);
  expect(shop.value?.ovens[0]?.rated_w).toBe(800);
});

test("an edit from far ahead does not freeze what a caramel contains", async () => {
  const { store, shop, book } = await phone();
  await book.write([edit("caramels/a", "contains", ["milk", "soya"])]);
  const [own] = await store.events.unsent();
  const far = { ...own!, id: "far", device_id: "another", at_ms: 1e14, body: { ...edit("caramels/a", "contains", ["milk"]) } };
  await store.events.mergePulled([{ ...far, position: 1, received_ms: T0 }], { cursor: 1, cursor_mark: null });
  await book.refresh();
  expect(shop.value?.caramels[0]?.contains).toEqual(["milk", "soya"]);
  await book.write([edit("caramels/a", "contains", ["milk", "nuts"])]);
  expect(shop.value?.caramels[0]?.contains).toEqual(["milk", "nuts"]);
});

test("two phones that edited off line end with the same shop", async () => {
  const [one, other] = [await phone(), await phone()];
  await one.book.write([edit("ovens/a", "rated_w", 900), edit("shop", "name", "Ours")]);
  clock += 5;
  await other.book.write([edit("ovens/a", "step_s", 15), edit("shop", "name", "Theirs")]);
  await sends(one.store, other);
  await sends(other.store, one);
  expect(one.shop.value).toEqual(other.shop.value);
  expect(one.shop.value).toMatchObject({ name: "Theirs", ovens: [{ rated_w: 900, step_s: 15 }] });
});

test("a phone without edits keeps the document of its server", async () => {
  const { shop, book } = await phone();
  shop.value = { ...(shop.value as Shop), name: "Kept" };
  await book.refresh();
  expect(shop.value.name).toBe("Kept");
});
