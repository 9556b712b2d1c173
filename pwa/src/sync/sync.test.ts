// @vitest-environment node
import "fake-indexeddb/auto";
import { afterEach, beforeEach, expect, test, vi } from "vitest";

import type { BenchEvent, Health, Pulled, PushAnswer, Pushed, ServedEvent, Shop } from "../documents";
import { openStore, type Store, uuid7 } from "../storage";
import { type Api, Refusal, Unreachable } from "./api";
import { backoffMs } from "./backoff";
import { Exchange, GROUP } from "./exchange";
import { SyncLoop } from "./loop";
import { OffsetFilter, sample } from "./offset";

const T0 = 1_790_000_000_000;

/** A server over a fake network: a log by position, an answer per event, and faults on demand. */
class Server implements Api {
  log: ServedEvent[] = [];
  logId = "first";
  private stored = 0;
  version = "0.1.0";
  reachable = true;
  /** Answers are lost on the way so many times: stored, but the phone never hears of it. */
  loseAnswers = 0;
  refuse = (_event: BenchEvent): string | null => null;
  /** The whole request is turned away when it holds such an event. */
  choke = (_event: BenchEvent): boolean => false;
  pushes: string[][] = [];
  role: Health["role"] = "owner";

  health(): Promise<Health> {
    if (!this.reachable) return Promise.reject(new Unreachable("off"));
    const clock = { received_ms: T0, sent_ms: T0 };
    return Promise.resolve({ app: "amberbench", engine_version: this.version, shop_id: "shop", log_id: this.logId, role: this.role, ...clock });
  }
  contributions(): Promise<never[]> {
    return Promise.resolve([]);
  }
  trace(): Promise<never> {
    return Promise.reject(new Unreachable("not asked here"));
  }
  push(events: BenchEvent[]): Promise<Pushed> {
    this.pushes.push(events.map((event) => event.id));
    if (events.some(this.choke)) return Promise.reject(new Refusal(422, "malformed"));
    const answers = events.map((event) => this.take(event));
    if (this.loseAnswers > 0) {
      this.loseAnswers -= 1;
      return Promise.reject(new Unreachable("lost"));
    }
    return Promise.resolve({ log_id: this.logId, answers, received_ms: T0, sent_ms: T0 });
  }
  take(event: BenchEvent): PushAnswer {
    const code = this.refuse(event);
    const answer = { id: event.id, position: null, flags: [], code, field: null };
    if (code) return { ...answer, result: "refused" };
    const known = this.log.find((one) => one.id === event.id);
    if (known) return { ...answer, result: "known", position: known.position };
    this.log.push({ ...event, position: this.log.length + 1, received_ms: T0 + ++this.stored, flags: [] });
    return { ...answer, result: "stored", position: this.log.length };
  }
  private markAt(position: number): string | null {
    const event = this.log[position - 1];
    return event ? `${event.received_ms}-${event.id}` : null;
  }
  pull(after: number, seen: string | null): Promise<Pulled> {
    if (seen && this.markAt(after) !== seen) return Promise.reject(new Refusal(422, "other_log"));
    const events = this.log.filter((event) => event.position > after).slice(0, 500);
    const cursor = events.at(-1)?.position ?? after;
    const cursor_mark = this.markAt(cursor);
    return Promise.resolve({ log_id: this.logId, events, cursor, cursor_mark, more: cursor < this.log.length });
  }
  /** Events in one page of the snapshot, and after how many pages it breaks off. */
  perPage = Infinity;
  pages = Infinity;
  snapshot(after: number, upto: number | null) {
    if (this.pages-- <= 0) return Promise.reject(new Unreachable("broken off"));
    const cursor = upto ?? this.log.length;
    const rest = this.log.filter(({ position }) => position > after && position <= cursor);
    const events = rest.slice(0, this.perPage);
    const next = events.length < rest.length ? (events.at(-1)?.position ?? null) : null;
    return Promise.resolve({ log_id: this.logId, shop: after === 0 ? SHOP : null, events, summaries: [], cursor, cursor_mark: this.markAt(cursor), next });
  }
  batches = () => Promise.resolve({ batches: [], more: false });
  batch = () => Promise.reject(new Unreachable("not asked here"));
  file = () => Promise.reject(new Unreachable("not asked here"));
  plan = () => Promise.reject(new Unreachable("not asked here"));
}

const NO_ROWS = { ovens: [], vessels: [], bases: [], bars: [], tables: [], frames: [], trays: [], funnels: [], caramels: [], chocolates: [], products: [], thermometers: [], materials: [], boxes: [], customers: [], suppliers: [], people: [] };
const SHOP: Shop = {
  id: "shop",
  name: "Invented",
  invented: true,
  language: "en",
  units: { mass: "kg", length: "mm", temperature: "°C", power: "W" },
  room_c: 21,
  humidity: null,
  fridge_c: 5,
  address: "",
  currency: "",
  rate_minor_per_h: null,
  energy_minor_per_kwh: null,
  open_s: 28_800,
  close_s: 61_200,
  work_days: [],
  rule: null,
  code_pattern: "",
  basis: {},
  ...NO_ROWS,
};
let names = 0;
let server: Server;
let store: Store;

beforeEach(async () => {
  server = new Server();
  store = await openStore(T0, `sync-${++names}`);
});
afterEach(() => vi.useRealTimers());

function exchange(to: Store = store): Exchange {
  return new Exchange(to, server, new OffsetFilter(), () => T0);
}

async function write(count: number, to: Store = store): Promise<BenchEvent[]> {
  const written: BenchEvent[] = [];
  for (let n = 0; n < count; n++) {
    const id = uuid7(T0 + n);
    const when = { at_ms: T0 + n, offset_ms: 0 };
    written.push(await to.events.append({ id, shop_id: "shop", stream: "batch/a", kind: "stirred", body: { n }, ...when }));
  }
  return written;
}

test("everything arrives once, in the order it was written, in small groups", async () => {
  const written = await write(GROUP * 2 + 5);
  await exchange().run();
  expect(server.log.map((event) => event.id)).toEqual(written.map((event) => event.id));
  expect(server.pushes.map((group) => group.length)).toEqual([GROUP, GROUP, 5]);
  expect(await store.events.unsentCount()).toBe(0);
});

test("an answer lost on the way costs nothing: the event is asked for again and is known", async () => {
  await write(3);
  server.loseAnswers = 1;
  await expect(exchange().run()).rejects.toThrow(Unreachable);
  expect(await store.events.unsentCount()).toBe(3);
  await exchange().run();
  expect(server.log).toHaveLength(3);
  expect(await store.events.unsentCount()).toBe(0);
});

test("a reader's phone keeps what it recorded, reads on, and sends it in another role", async () => {
  const other = await openStore(T0, `sync-${++names}`);
  await write(1, other);
  await exchange(other).run();
  const [kept] = await write(1);
  server.role = "reader";
  await exchange().run();
  expect(server.log).toHaveLength(1);
  expect(await store.events.all()).toHaveLength(2);
  expect((await store.events.waiting(9)).map(({ id }) => id)).toEqual([kept?.id]);
  server.role = "bench";
  await exchange().run();
  expect(server.log).toHaveLength(2);
});

test("what was refused in one role is offered again in another, and not before", async () => {
  await write(1);
  server.role = "bench";
  server.refuse = () => (server.role === "owner" ? null : "not_for_role");
  await exchange().run();
  await exchange().run();
  expect(server.pushes).toHaveLength(1);
  expect(await store.events.refused()).toHaveLength(1);
  server.role = "owner";
  await exchange().run();
  expect(server.log).toHaveLength(1);
  expect(await store.events.unsentCount()).toBe(0);
});

test("a phone starts from the snapshot and goes on from its cursor", async () => {
  const other = await openStore(T0, `sync-${++names}`);
  await write(2, other);
  await exchange(other).run();
  const first = await exchange().run();
  expect(first.shop).toEqual(SHOP);
  expect(await store.meta.get("shop")).toEqual(SHOP);
  expect(await store.events.eventsOf("batch/a")).toHaveLength(2);
  await write(1, other);
  await exchange(other).run();
  const second = await exchange().run();
  expect([...second.touched]).toEqual(["batch/a"]);
  expect(await store.events.eventsOf("batch/a")).toHaveLength(3);
});

test("a snapshot in pages that breaks off begins again, and comes whole", async () => {
  const other = await openStore(T0, `sync-${++names}`);
  await write(5, other);
  await exchange(other).run();
  server.perPage = 2;
  server.pages = 2;
  await expect(exchange().run()).rejects.toThrow(Unreachable);
  expect(await store.syncCursor.read()).toBeNull();
  server.pages = Infinity;
  expect((await exchange().run()).shop).toEqual(SHOP);
  expect(await store.events.eventsOf("batch/a")).toHaveLength(5);
  expect((await store.syncCursor.read())?.cursor).toBe(5);
});

test("two phones end with the same events in the same order", async () => {
  const other = await openStore(T0, `sync-${++names}`);
  await write(4);
  await write(3, other);
  for (const one of [store, other, store, other]) await exchange(one).run();
  const ids = async (one: Store) => (await one.events.eventsOf("batch/a")).map((event) => event.id);
  expect(await ids(store)).toHaveLength(7);
  expect(await ids(store)).toEqual(await ids(other));
});

/** The server's database is another one: nothing in it. */
function loses(to: Server, keep = 0): void {
  to.log = to.log.slice(0, keep);
  if (keep === 0) to.logId = "second";
}

test("a phone that meets another log offers it everything it holds, its own and others', once", async () => {
  const other = await openStore(T0, `sync-${++names}`);
  await write(2);
  await write(2, other);
  for (const one of [store, other, store]) await exchange(one).run();
  loses(server);
  const result = await exchange().run();
  expect(result.anotherLog).toBe(true);
  expect(await store.meta.get("another_log_ms")).toBe(T0);
  expect(server.log).toHaveLength(4);
  expect((await exchange(other).run()).anotherLog).toBe(true);
  expect((await exchange().run()).anotherLog).toBe(false);
  expect(new Set(server.log.map((event) => event.id)).size).toBe(4);
  expect(server.log).toHaveLength(4);
  for (const one of [store, other]) expect(await one.events.unsentCount()).toBe(0);
});

test("a log put back from a copy is noticed by what stands at the cursor, though it has grown again", async () => {
  const other = await openStore(T0, `sync-${++names}`);
  await exchange(other).run();
  await write(4);
  await exchange().run();
  loses(server, 2);
  await write(3, other);
  await exchange(other).run();
  expect(server.log).toHaveLength(5);
  expect((await exchange().run()).anotherLog).toBe(true);
  await exchange(other).run();
  for (const one of [store, other]) expect(await one.events.eventsOf("batch/a")).toHaveLength(7);
  expect(server.log).toHaveLength(7);
});

test("what another log answered in the middle of an exchange is not believed", async () => {
  await exchange().run();
  await write(1);
  const push = server.push.bind(server);
  server.push = (events) => {
    server.logId = "second";
    return push(events);
  };
  await expect(exchange().run()).rejects.toThrow(Unreachable);
  expect(await store.events.unsentCount()).toBe(1);
  server.push = push;
  expect((await exchange().run()).anotherLog).toBe(true);
  expect(await store.events.unsentCount()).toBe(0);
});

test("a phone of an older app, which knew no log by name, offers everything once and says nothing", async () => {
  await write(2);
  await exchange().run();
  loses(server);
  server.logId = "first";
  await store.meta.put("log_id", undefined);
  await store.meta.put("cursor_mark", undefined);
  expect((await exchange().run()).anotherLog).toBe(false);
  expect(server.log).toHaveLength(2);
});

test("a refused event stays on the phone, out of the fold, and holds up nothing", async () => {
  const [, second] = await write(3);
  server.refuse = (event) => (event.id === second!.id ? "too_long" : null);
  const result = await exchange().run();
  expect(server.log).toHaveLength(2);
  expect([...result.touched]).toEqual(["batch/a"]);
  expect(await store.events.refused()).toEqual([{ event: second, code: "too_long" }]);
  await exchange().run();
  expect(server.pushes).toHaveLength(1);
  server.version = "0.2.0";
  server.refuse = () => null;
  await exchange().run();
  expect(server.log).toHaveLength(3);
  expect(await store.events.refused()).toEqual([]);
});

test("one event the server chokes on is found, and the others of its group get through", async () => {
  const written = await write(9);
  server.choke = (event) => event.id === written[4]!.id;
  await exchange().run();
  expect(server.log).toHaveLength(8);
  expect((await store.events.refused()).map((one) => one.event.id)).toEqual([written[4]!.id]);
});

test("a phone without access keeps its events as waiting, not as refused", async () => {
  await write(1);
  server.push = () => Promise.reject(new Refusal(403, "no_access"));
  await expect(exchange().run()).rejects.toThrow(Refusal);
  expect(await store.events.waiting(9)).toHaveLength(1);
});

test("events written while the server is away are sent when it is back", async () => {
  server.reachable = false;
  await write(2);
  await expect(exchange().run()).rejects.toThrow(Unreachable);
  server.reachable = true;
  await exchange().run();
  expect(server.log).toHaveLength(2);
});

// Rows worked out after RFC 5905 §8 with errata 5020, and two constructed ones.
test.each([
  [0, 50, 60, 110, 0, 100],
  [1000, 301040, 301045, 1085, 300000, 80],
  [500000, 375060, 375070, 500090, -124980, 80],
])("time stamps %d %d %d %d give offset and round trip", (t1, t2, t3, t4, offsetMs, roundTripMs) => {
  expect(sample(t1, t2, t3, t4)).toEqual({ offsetMs, roundTripMs });
});

test("the offset is not moved by a sample whose own error explains the difference", () => {
  const filter = new OffsetFilter();
  expect(filter.add({ offsetMs: 5000, roundTripMs: 80 })).toBe(5000);
  expect(filter.add({ offsetMs: 5030, roundTripMs: 70 })).toBe(5000);
  expect(filter.add({ offsetMs: 5030, roundTripMs: 10 })).toBe(5030);
  // A slow answer says less than the quick one before it.
  expect(filter.add({ offsetMs: 4800, roundTripMs: 900 })).toBe(5030);
});

test("a phone clock that is set during a shift is noticed with the next sample", () => {
  const filter = new OffsetFilter();
  filter.add({ offsetMs: 0, roundTripMs: 20 });
  expect(filter.add({ offsetMs: -3_600_000, roundTripMs: 60 })).toBe(-3_600_000);
});

test("pauses grow while nobody answers, differ by chance and stay below a minute", () => {
  const grown = [1, 2, 3, 4, 5, 6, 7, 20].map((failures) => backoffMs(failures, 1));
  expect(grown).toEqual([1000, 2000, 4000, 8000, 16000, 32000, 60000, 60000]);
  expect(backoffMs(5, 0)).toBe(8000);
  expect(backoffMs(0, 0.3)).toBe(15000);
});

function loop(outcomes: boolean[], log: string[]) {
  return new SyncLoop({
    exchange: () => {
      const fine = outcomes.shift() ?? true;
      log.push(fine ? "sent" : "failed");
      return fine
        ? Promise.resolve({ health: {} as Health, anotherLog: false, shop: null, summaries: null, touched: new Set<string>() })
        : Promise.reject(new Unreachable("off"));
    },
    alone: async (work) => {
      await work();
      return true;
    },
    random: () => 1,
    after: () => {},
  });
}

test("the loop tries ever more rarely and comes back to calm", async () => {
  vi.useFakeTimers();
  const log: string[] = [];
  const one = loop([false, false, false, true], log);
  await one.nudge();
  await vi.advanceTimersByTimeAsync(999);
  expect(log).toHaveLength(1);
  await vi.advanceTimersByTimeAsync(1);
  expect(log).toHaveLength(2);
  await vi.advanceTimersByTimeAsync(2000 + 4000);
  expect(log).toEqual(["failed", "failed", "failed", "sent"]);
  await vi.advanceTimersByTimeAsync(15_000);
  expect(log).toHaveLength(5);
  one.stop();
});

test("a written event is sent at once, except while the back-off runs", async () => {
  vi.useFakeTimers();
  const log: string[] = [];
  const one = loop([true, true, false], log);
  await one.nudge();
  one.wrote();
  await vi.advanceTimersByTimeAsync(0);
  expect(log).toHaveLength(2);
  one.wrote();
  await vi.advanceTimersByTimeAsync(0);
  one.wrote();
  await vi.advanceTimersByTimeAsync(500);
  expect(log).toEqual(["sent", "sent", "failed"]);
  one.stop();
});
