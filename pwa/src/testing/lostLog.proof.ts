// @vitest-environment node
/** Three phones and a real server whose database is deleted, put back from a copy, or another one: all of them notice, and
 * in the end the log has everything once and all three have the same. Run by e2e/test_lost_log.py. */
import "fake-indexeddb/auto";
import { signal } from "@preact/signals";
import { afterEach, beforeAll, beforeEach, expect, test } from "vitest";

import type { BenchEvent, PlanDocument, Shop, ShopEdit } from "../documents";
import { BatchBook } from "../state/batchBook";
import { refreshStreams } from "../state/streamFolders";
import type { Compute } from "../state/types";
import { ShopBook } from "../state/shopBook";
import { openStore, type Store, uuid7 } from "../storage";
import { batchStream } from "../streams";
import { httpApi } from "../sync/api";
import { Exchange } from "../sync/exchange";
import { OffsetFilter } from "../sync/offset";
import { realEngine } from "./engine";
import { RealServer } from "./realServer";

const PYTHON = process.env["AMBERBENCH_PROOF_PYTHON"] ?? "python3";
const CYCLE_MS = 120_000;

let compute: Compute;
let plan: PlanDocument;
let names = 0;
let server: RealServer;
let phones: [Phone, Phone, Phone];
/** Everything that any phone has written. */
let written: Set<string>;
const reach = globalThis.fetch;

/** A phone as the app puts it together, without screens. */
class Phone {
  /** How often it noticed that the log was another one. */
  noticed = 0;
  readonly shop = signal<Shop | null>(null);
  private constructor(
    readonly store: Store,
    readonly book: BatchBook,
    private readonly exchange: Exchange,
  ) {}
  shopBook!: ShopBook;

  static async opens(): Promise<Phone> {
    const store = await openStore(Date.now(), `lost-${++names}`);
    const common = { store, compute, phoneNow: () => Date.now(), offsetMs: () => 0, wrote: () => {}, engineVersion: () => "test" };
    let phone: Phone;
    const book = new BatchBook({ ...common, shopId: () => phone.shop.value?.id ?? "" });
    phone = new Phone(store, book, new Exchange(store, httpApi, new OffsetFilter(), () => Date.now()));
    phone.shopBook = new ShopBook({ ...common, byWhom: (body) => body, shopId: () => phone.shop.value?.id ?? "" }, phone.shop);
    await phone.exchanges();
    return phone;
  }

  async exchanges(): Promise<void> {
    const { anotherLog, shop, touched } = await this.exchange.run();
    if (anotherLog) this.noticed += 1;
    if (shop) this.shop.value = shop;
    await refreshStreams({ batch: this.book, shop: this.shopBook }, touched);
  }

  async begins(): Promise<string> {
    const batchId = uuid7(Date.now());
    await this.does(batchId, "batch_opened", { plan, engine_version: "proof" });
    return batchId;
  }

  async does(batchId: string, kind: string, body: Record<string, unknown> = {}): Promise<void> {
    written.add((await this.book.write(batchId, kind, body)).id);
    await this.book.refresh(batchId);
  }

  async edits(doc: string, field: string, value: unknown): Promise<void> {
    const before = new Set((await this.store.events.unsent()).map((event) => event.id));
    await this.shopBook.write([{ doc, field, value, basis: "typed" } satisfies ShopEdit]);
    for (const { id } of await this.store.events.unsent()) if (!before.has(id)) written.add(id);
  }
}

beforeAll(async () => {
  compute = await realEngine();
  const request = { have: { kg: 1.8 }, slab_height_m: 0.01, piece_length_m: 0.024, piece_width_m: 0.024, bars_m: [0.01], oven: { rated_w: 1000 } };
  const reply = await compute("slab.plan", request);
  plan = { kind: "slab", name: "Invented", prebottom: false, product_id: null, oven_id: null, base_id: null, lot: null, request, reply };
}, 60_000);

beforeEach(async () => {
  globalThis.fetch = reach;
  server = new RealServer(PYTHON);
  server.isTheOnlyOne();
  await server.starts();
  written = new Set();
  phones = [await Phone.opens(), await Phone.opens(), await Phone.opens()];
}, CYCLE_MS);

afterEach(async () => {
  await server.stops();
  server.removes();
});

async function allExchange(): Promise<void> {
  for (const phone of [...phones, ...phones]) await phone.exchanges();
}

/** Two batches and three edits, known to all phones and to the server; the ids of the batches. */
async function morning(): Promise<[string, string]> {
  const [a, b, c] = phones;
  const batches: [string, string] = [await a.begins(), await b.begins()];
  await a.does(batches[0], "ready_checked");
  await c.edits("ovens/oven-large", "rated_w", 900);
  await c.edits("ovens/own", "name", "Blue oven");
  await b.edits("caramels/caramel-firm", "contains", ["milk", "soya"]);
  await allExchange();
  return batches;
}

/** The whole log of the server. */
async function wholeLog(): Promise<BenchEvent[]> {
  const log: BenchEvent[] = [];
  for (let cursor = 0, more = true; more; ) {
    const page = await httpApi.pull(cursor, null);
    log.push(...page.events);
    ({ cursor, more } = page);
  }
  return log;
}

/** The server has everything once, and each phone has of every batch and of the shop what the others have. */
async function agree(batches: string[]): Promise<void> {
  await allExchange();
  const ids = (await wholeLog()).map((event) => event.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect([...written].filter((id) => !ids.includes(id))).toEqual([]);
  const shop = JSON.parse(await httpApi.file("/api/shop")) as Shop;
  expect(shop.ovens.find(({ id }) => id === "oven-large")?.rated_w).toBe(900);
  expect(shop.ovens.find(({ id }) => id === "own")?.name).toBe("Blue oven");
  expect(shop.caramels.find(({ id }) => id === "caramel-firm")?.contains).toEqual(["milk", "soya"]);
  for (const phone of phones) {
    expect(await phone.store.events.unsentCount()).toBe(0);
    expect(phone.shop.value).toMatchObject({ id: shop.id, ovens: shop.ovens, caramels: shop.caramels });
  }
  for (const batchId of batches) {
    const record = await httpApi.batch(batchId);
    for (const phone of phones) {
      expect((await phone.store.events.eventsOf(batchStream(batchId))).map((event) => event.id)).toEqual(record.events.map((event) => event.id));
      expect(phone.book.batches.value.get(batchId)?.run?.done).toEqual(record.run?.done);
    }
  }
}

test("a database that was deleted gets everything back from three phones, and nothing twice", { timeout: CYCLE_MS }, async () => {
  const batches = await morning();
  await server.stops();
  await phones[0].does(batches[0], "weighed", { kg: 1.8, lot: "A-1" });
  server.loses();
  await server.starts();
  await phones[1].does(batches[1], "ready_checked");
  await agree(batches);
  expect(phones.map((phone) => phone.noticed)).toEqual([1, 1, 1]);
});

test("a copy of yesterday is noticed though the log has grown past every phone's cursor", { timeout: CYCLE_MS }, async () => {
  const batches = await morning();
  await server.stops();
  server.copies("shop", "copy");
  await server.starts();
  await phones[0].does(batches[0], "weighed", { kg: 1.8, lot: "A-1" });
  await phones[1].does(batches[1], "ready_checked");
  await allExchange();
  await server.stops();
  server.copies("copy", "shop");
  await server.starts();
  for (let notes = 0; notes < 5; notes++) await phones[2].does(batches[1], "noted", { text: String(notes) });
  // They reach the server before any phone has asked it which log it has.
  await httpApi.push(await phones[2].store.events.waiting(9));
  await agree(batches);
  expect(phones.map((phone) => phone.noticed)).toEqual([1, 1, 1]);
});

test("a database of another kitchen is noticed, and both kitchens' batches are on all phones", { timeout: CYCLE_MS }, async () => {
  await server.stops();
  server.copies("shop", "ours");
  server.loses();
  await server.starts();
  const [a] = phones;
  const theirs = await a.begins();
  await a.exchanges();
  await server.stops();
  server.copies("shop", "theirs");
  server.copies("ours", "shop");
  await server.starts();
  for (const phone of phones) await phone.exchanges();
  const ours = await morning();
  const before = phones.map((phone) => phone.noticed);
  await server.stops();
  server.copies("theirs", "shop");
  await server.starts();
  await agree([...ours, theirs]);
  expect(phones.map((phone, n) => phone.noticed - before[n]!)).toEqual([1, 1, 1]);
});
