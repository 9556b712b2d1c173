// @vitest-environment node
import "fake-indexeddb/auto";
import { deleteDB, openDB } from "idb";
import { expect, test } from "vitest";

import { Connection } from "./database";
import { type Draft, EventLog } from "./events";
import { olderStore } from "../testing/oldStore";
import type { Schema } from "./schema";
import { openStore, uuid7 } from ".";

const T0 = 1_790_000_000_000;
let names = 0;
const fresh = () => openStore(T0, `test-${++names}`);

function draft(batch: string | null, at_ms = T0, kind = "stirred"): Draft {
  return { id: uuid7(at_ms), shop_id: "shop", stream: batch === null ? "shop/shop" : `batch/${batch}`, kind, body: {}, at_ms, offset_ms: 0 };
}

test("an id is a UUID of version 7 that carries the phone's time", () => {
  const id = uuid7(T0);
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(parseInt(id.replaceAll("-", "").slice(0, 12), 16)).toBe(T0);
  expect(uuid7(T0)).not.toBe(id);
});

test("the device keeps its name, and two starts at once agree on one", async () => {
  const name = `test-${++names}`;
  const [one, two] = await Promise.all([openStore(T0, name), openStore(T0, name)]);
  expect(one.deviceId).toBe(two.deviceId);
  expect((await openStore(T0 + 1, name)).deviceId).toBe(one.deviceId);
});

test("event and outbox row are written together, numbered without gaps", async () => {
  const { events, deviceId } = await fresh();
  const written = await Promise.all([1, 2, 3].map((n) => events.append(draft("a", T0 + n))));
  expect(written.map((event) => event.seq)).toEqual([1, 2, 3]);
  expect(written[0]?.device_id).toBe(deviceId);
  expect((await events.waiting(100)).map((event) => event.seq)).toEqual([1, 2, 3]);
});

test("writing the same event twice leaves it once", async () => {
  const { events } = await fresh();
  const one = draft("a");
  await events.append(one);
  await events.append(one);
  expect(await events.unsentCount()).toBe(1);
  expect(await events.eventsOf("batch/a")).toHaveLength(1);
});

test("time is raised above the newest event of the batch, and of no other", async () => {
  const { events } = await fresh();
  await events.append(draft("a", T0 + 1000));
  const second = await events.append(draft("a", T0));
  const other = await events.append(draft("b", T0));
  expect(second.at_ms).toBe(T0 + 1001);
  expect(other.at_ms).toBe(T0);
});

const DAY = 86_400_000;

test("an event from more than a day ahead is kept, folded nowhere, and raises nobody's time", async () => {
  const { events } = await fresh();
  const own = await events.append(draft("a"));
  const far = { ...own, id: uuid7(T0), device_id: "another", at_ms: 1e14, position: 2, received_ms: T0 };
  const near = { ...far, id: uuid7(T0), at_ms: T0 + DAY, position: 3 };
  expect([...(await events.mergePulled([far], { cursor: 2, cursor_mark: null }))]).toEqual(["batch/a"]);
  expect((await events.eventsOf("batch/a")).map((event) => event.id)).toEqual([own.id]);
  expect((await events.append(draft("a"))).at_ms).toBe(T0 + 1);
  await events.mergePulled([near], { cursor: 3, cursor_mark: null });
  expect((await events.append(draft("a"))).at_ms).toBe(T0 + DAY + 1);
  expect((await events.setAside()).map((event) => event.id)).toEqual([far.id]);
  expect((await events.all()).map((event) => event.id)).toContain(far.id);
});

test("a phone's own event that the server set aside leaves the fold with the pull that says so", async () => {
  const { events } = await fresh();
  const own = await events.append({ ...draft("a"), at_ms: T0 + 2 * DAY });
  expect(await events.eventsOf("batch/a")).toHaveLength(1);
  expect([...(await events.mergePulled([{ ...own, position: 1, received_ms: T0 }], { cursor: 1, cursor_mark: null }))]).toEqual(["batch/a"]);
  expect(await events.eventsOf("batch/a")).toEqual([]);
  expect(await events.setAside()).toHaveLength(1);
  expect([...(await events.mergePulled([{ ...own, position: 1, received_ms: T0 }], { cursor: 1, cursor_mark: null }))]).toEqual([]);
});

test("a phone that had folded an event from far ahead sets it aside when the app is updated", async () => {
  const name = `test-${++names}`;
  const { stream: _stream, ...written } = draft("a", 1e14);
  const event = { ...written, batch_id: "a", v: 1, device_id: "another", seq: 1, received_ms: T0, flags: ["future"] };
  await olderStore(name, 3, { events: [{ id: event.id, batch_id: "a", corrected_ms: 1e14, position: 1, event }] });
  const { events } = await openStore(T0, name);
  expect(await events.eventsOf("batch/a")).toEqual([]);
  expect((await events.setAside()).map((one) => one.id)).toEqual([event.id]);
});

test("the raised time counts the clock's error", async () => {
  const { events } = await fresh();
  await events.append({ ...draft("a", T0), offset_ms: 300_000 });
  const second = await events.append({ ...draft("a", T0), offset_ms: -1000 });
  expect(second.at_ms + second.offset_ms).toBe(T0 + 300_001);
});

test("what the server has leaves the outbox, what it refused stays out of the fold and is seen", async () => {
  const { events } = await fresh();
  const [a, b, c] = await Promise.all([1, 2, 3].map((n) => events.append(draft("a", T0 + n))));
  await events.markSent(
    [
      { id: a!.id, result: "stored", position: 7 },
      { id: b!.id, result: "refused", code: "too_long" },
      { id: c!.id, result: "known", position: 9 },
    ],
    "0.1.0",
  );
  expect(await events.unsentCount()).toBe(1);
  expect(await events.waiting(100)).toEqual([]);
  expect((await events.eventsOf("batch/a")).map((event) => event.id)).toEqual([a!.id, c!.id]);
  expect(await events.refused()).toEqual([{ event: b, code: "too_long" }]);
  expect((await events.unsent()).map((event) => event.id)).toEqual([b!.id]);
});

test("a refused event is offered again to another version of the server, not to the same", async () => {
  const { events } = await fresh();
  const one = await events.append(draft("a"));
  await events.markSent([{ id: one.id, result: "refused" }], "0.1.0");
  expect(await events.offerAgain("0.1.0")).toBe(0);
  expect(await events.offerAgain("0.2.0")).toBe(1);
  expect((await events.waiting(100)).map((event) => event.id)).toEqual([one.id]);
});

test("pulled events are kept once, move the cursor, and tell which batches are new", async () => {
  const { events, meta } = await fresh();
  const own = await events.append(draft("a", T0));
  const foreign = { ...own, id: uuid7(T0), device_id: "other", at_ms: T0 - 5, stream: "batch/b", batch_id: "b" };
  const pulled = [
    { ...own, position: 1 },
    { ...foreign, position: 2 },
  ];
  expect([...(await events.mergePulled(pulled, { cursor: 2, cursor_mark: null }))]).toEqual(["batch/b"]);
  expect([...(await events.mergePulled(pulled, { cursor: 2, cursor_mark: null }))]).toEqual([]);
  expect(await meta.get("cursor")).toBe(2);
  // Its own event came back: the answer to the push was lost, the event was not.
  expect(await events.unsentCount()).toBe(0);
  expect(await events.eventsOf("batch/b")).toHaveLength(1);
});

test("events of a batch come in their total order: corrected time, device, count", async () => {
  const { events } = await fresh();
  const base = { ...draft("a"), batch_id: "a", v: 1, device_id: "m", seq: 1 };
  const row = (device_id: string, seq: number, at_ms: number, offset_ms = 0) => ({
    ...base,
    id: uuid7(T0),
    device_id,
    seq,
    at_ms,
    offset_ms,
    position: null,
  });
  await events.mergePulled([row("m", 2, T0), row("k", 9, T0), row("m", 1, T0), row("z", 1, T0 + 9, -10)], { cursor: 1, cursor_mark: null });
  expect((await events.eventsOf("batch/a")).map((event) => `${event.device_id}${event.seq}`)).toEqual(["z1", "k9", "m1", "m2"]);
});

test("a connection closed under us is opened again, and nothing is lost", async () => {
  const connection = new Connection(`test-${++names}`);
  await connection.use((db) => db.put("meta", "phone", "device_id"));
  const log = new EventLog(connection);
  await log.append(draft("a", T0));
  await connection.use(async (db) => db.close());
  await log.append(draft("a", T0 + 1));
  expect((await log.eventsOf("batch/a")).map((event) => event.seq)).toEqual([1, 2]);
});

test("another fault of the store is passed on", async () => {
  const connection = new Connection(`test-${++names}`);
  await expect(connection.use(() => Promise.reject(new DOMException("full", "QuotaExceededError")))).rejects.toThrow("full");
});

test("batches closed long ago leave the phone once the server has all of them and was backed up since", async () => {
  const { events, batches, meta } = await fresh();
  const plan = { kind: "slab" } as never;
  const row = (batch_id: string, closed_at_ms: number | null) =>
    batches.put({ batch_id, plan, run: null, advice: null, folded: { count: 1, last_id: null }, opened_at_ms: T0, closed_at_ms });
  const day = 86_400_000;
  for (const name of ["old", "unsent", "young", "open"]) {
    const event = await events.append(draft(name));
    if (name !== "unsent") await events.markSent([{ id: event.id, result: "stored", position: 1 }], "0.1.0");
  }
  await row("old", T0 - 31 * day);
  await row("unsent", T0 - 31 * day);
  await row("young", T0 - 29 * day);
  await row("open", null);
  const names = async () => (await batches.all()).map((one) => one.batch_id).sort();
  for (const [backupMs, sentMs] of [[undefined, T0], [null, T0], [T0 - 1, T0], [T0 - 32 * day, T0 - 40 * day]] as const) {
    await meta.put("backup_ms", backupMs);
    await meta.put("sent_ms", sentMs);
    await batches.forgetOld(T0);
    expect(await names()).toEqual(["old", "open", "unsent", "young"]);
  }
  await meta.put("backup_ms", T0 - 1);
  await meta.put("sent_ms", T0 - 2);
  await batches.forgetOld(T0);
  expect(await names()).toEqual(["open", "unsent", "young"]);
  expect(await events.eventsOf("batch/old")).toEqual([]);
  expect(await events.eventsOf("batch/unsent")).toHaveLength(1);
});

test("what belongs to a stream that only a newer app knows is kept and follows the newest of its own", async () => {
  const { events, batches } = await fresh();
  const own = await events.append(draft("a", T0 + 9));
  const order = { ...own, id: uuid7(T0), device_id: "newer", stream: "order/7", batch_id: null, kind: "order_taken", at_ms: T0 + 5 };
  expect([...(await events.mergePulled([{ ...order, position: 1 }], { cursor: 1, cursor_mark: null }))]).toEqual(["order/7"]);
  const next = await events.append({ ...draft(null), stream: "order/7" });
  expect([next.stream, next.batch_id, next.at_ms]).toEqual(["order/7", null, T0 + 6]);
  expect((await events.eventsOf("order/7")).map((event) => event.id)).toEqual([order.id, next.id]);
  expect(await events.eventsOfStreams("shop")).toEqual([]);
  expect(await batches.uncached()).toEqual(["a"]);
});

test("batches that were never folded are found", async () => {
  const { events, batches } = await fresh();
  await events.append(draft("a", T0));
  await events.append(draft("a", T0 + 1));
  await events.append(draft("b", T0));
  await events.append(draft(null, T0));
  expect((await batches.uncached()).sort()).toEqual(["a", "b"]);
});

test("a store thrown away under the open app is written again from memory, with the phone's name and count", async () => {
  const name = `test-${++names}`;
  const store = await openStore(T0, name);
  const own = await store.events.append(draft("a"));
  const other = { ...own, id: uuid7(T0 + 1), device_id: "another", seq: 40 };
  await store.events.mergePulled([{ ...other, position: 1 }], { cursor: 1, cursor_mark: null });
  store.onLoss(() => ({ events: [own, other], meta: { shop: "kept" } }));
  await deleteDB(name);
  const next = await store.events.append(draft("a", T0 + 2000));
  expect([next.device_id, next.seq]).toEqual([store.deviceId, own.seq + 1]);
  expect((await store.events.eventsOf("batch/a")).map((event) => event.id).sort()).toEqual([own.id, other.id, next.id].sort());
  expect((await store.events.waiting(9)).map((event) => event.id)).toEqual([own.id, next.id]);
  expect(await store.meta.get("shop")).toBe("kept");
  expect(await store.meta.get("cursor")).toBeUndefined();
});

const picture = (id = uuid7(T0)) => ({ id, blob: new Blob(["\u00ff\u00d8 slab"], { type: "image/jpeg" }) });

test("a photo and its event are written together, and both wait to be sent", async () => {
  const { events, photos } = await fresh();
  const one = picture();
  const event = await events.appendPhoto(draft("a"), one);
  expect((await events.waiting(9)).map(({ id }) => id)).toEqual([event.id]);
  expect(await (await photos.get(one.id))?.text()).toBe(await one.blob.text());
  expect((await photos.next("0.1.0", new Set()))?.id).toBe(one.id);
  expect((await events.append(draft("a", T0 + 1))).seq).toBe(event.seq + 1);
});

test.each(["photo", "event"])("when a %s cannot be kept, neither it nor what belongs to it is", async (which) => {
  const name = `test-${++names}`;
  const { events, photos } = await openStore(T0, name);
  const event = draft("a");
  const photo = which === "photo" ? { id: uuid7(T0), blob: (() => {}) as never } : picture();
  // Its place in the outbox is taken: the last request of the transaction fails.
  if (which === "event") await (await openDB<Schema>(name)).put("outbox", { id: event.id, seq: 9, refused: null, refused_by: null });
  await expect(events.appendPhoto(event, photo)).rejects.toThrow();
  expect(await events.eventsOf("batch/a")).toEqual([]);
  expect(await photos.get(photo.id)).toBeUndefined();
  expect(await photos.unsentCount()).toBe(0);
  expect((await events.append(draft("a"))).seq).toBe(1);
});

test("photos of batches closed long ago leave the phone once the server has them", async () => {
  const { events, batches, photos, meta } = await fresh();
  await meta.put("backup_ms", T0);
  const folded = { count: 1, last_id: null };
  const ids = new Map<string, string>();
  for (const batch_id of ["old", "unsent", "young"]) {
    const one = picture();
    ids.set(batch_id, one.id);
    const event = await events.appendPhoto(draft(batch_id), one);
    await events.markSent([{ id: event.id, result: "stored", position: 1 }], "0.1.0");
    if (batch_id !== "unsent") await photos.sent(one.id);
    const closed_at_ms = T0 - (batch_id === "young" ? 29 : 31) * 86_400_000;
    await batches.put({ batch_id, plan: {} as never, run: null, advice: null, folded, opened_at_ms: T0, closed_at_ms });
  }
  await batches.forgetOld(T0);
  expect((await batches.all()).map((row) => row.batch_id).sort()).toEqual(["unsent", "young"]);
  const kept = await Promise.all([...ids.values()].map((id) => photos.get(id)));
  expect(kept.map((blob) => blob !== undefined)).toEqual([false, true, true]);
  expect(await events.eventsOf("batch/old")).toEqual([]);
});

test("a phone with the store of an older version keeps what it has and gets room for photos", async () => {
  const name = `test-${++names}`;
  await olderStore(name, 2, {}, { device_id: "phone-of-old" });
  const store = await openStore(T0, name);
  const one = picture();
  const event = await store.events.appendPhoto(draft("a"), one);
  expect(event.device_id).toBe("phone-of-old");
  expect(await store.photos.unsentCount()).toBe(1);
});
