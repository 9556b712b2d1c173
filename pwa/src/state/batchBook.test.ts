// @vitest-environment node
import "fake-indexeddb/auto";
import { beforeAll, beforeEach, expect, test } from "vitest";

import type { PlanDocument } from "../documents";
import { EngineFailure, EngineProblem } from "../problems";
import { openStore, type Store, uuid7 } from "../storage";
import { batchStream } from "../streams";
import { inEngine, realEngine } from "../testing/engine";
import { BatchBook } from "./batchBook";
import type { Compute } from "./types";
import { TapRecorder } from "./tapRecorder";
import { PendingComputations } from "./pendingComputations";

const T0 = 1_790_000_000_000;
let compute: Compute;
let plan: PlanDocument;
let nowMs: number;
let names = 0;
let store: Store;

beforeAll(async () => {
  compute = await realEngine();
  const request = {
    have: { kg: 1.8 },
    slab_height_m: 0.01,
    piece_length_m: 0.024,
    piece_width_m: 0.024,
    bars_m: [0.01],
    oven: { rated_w: 1000 },
  };
  const reply = await compute("slab.plan", request);
  plan = { kind: "slab", name: "Invented", prebottom: false, product_id: null, oven_id: null, base_id: null,
    lot: null, request, reply };
}, 60_000);

beforeEach(async () => {
  nowMs = T0;
  store = await openStore(T0, `book-${++names}`);
});

function book(engine: Compute = compute, of: Store = store, version = "one"): BatchBook {
  return new BatchBook({
    store: of,
    compute: engine,
    phoneNow: () => nowMs,
    offsetMs: () => 0,
    shopId: () => "shop",
    engineVersion: () => version,
    wrote: () => {},
  });
}

async function opened(one: BatchBook): Promise<string> {
  const batchId = uuid7(nowMs);
  await one.write(batchId, "batch_opened", { plan, engine_version: "test" });
  await one.refresh(batchId);
  return batchId;
}

/** Presses the big button of the open step and waits for the engine. */
async function press(one: BatchBook, batchId: string): Promise<void> {
  const action = one.batches.value.get(batchId)?.advice?.action;
  expect(action?.kind).toBeTruthy();
  nowMs += 1000;
  await one.write(batchId, action!.kind!, action!.body!);
  await one.refresh(batchId);
}

test("a batch begins with setting up and goes on with each event", async () => {
  const one = book();
  const batchId = await opened(one);
  expect(one.batches.value.get(batchId)?.advice?.step).toBe("set_up");
  await press(one, batchId);
  const batch = one.batches.value.get(batchId);
  expect(batch?.advice?.step).not.toBe("set_up");
  expect(batch?.events.map((event) => event.kind)).toEqual(["batch_opened", "ready_checked"]);
  expect(batch).toMatchObject({ pending: false, failure: null });
});

test("the event is on the disk before the engine has looked at it", async () => {
  const one = book();
  const batchId = await opened(one);
  await one.write(batchId, "ready_checked", {});
  expect(one.batches.value.get(batchId)?.pending).toBe(true);
  expect(await store.events.eventsOf(batchStream(batchId))).toHaveLength(2);
  await one.refresh(batchId);
  expect(one.batches.value.get(batchId)?.pending).toBe(false);
});

test("after a restart the batch is drawn as it was, before the engine has started", async () => {
  const one = book();
  const batchId = await opened(one);
  await press(one, batchId);
  const never: Compute = () => new Promise(() => {});
  const again = book(never);
  expect(await again.load()).toEqual([batchId]);
  expect(again.batches.value.get(batchId)).toEqual(one.batches.value.get(batchId));
});

test("an event that was written but not folded before the tab was killed is folded after", async () => {
  const one = book();
  const batchId = await opened(one);
  const killed = book(() => new Promise(() => {}));
  await killed.load();
  await killed.write(batchId, "ready_checked", {});
  const again = book();
  await again.load();
  expect(again.batches.value.get(batchId)?.pending).toBe(true);
  await again.refresh(batchId);
  expect(again.batches.value.get(batchId)?.run?.["done"]).toHaveProperty("set_up");
});

test("a broken engine loses no event and says that it failed", async () => {
  const one = book();
  const batchId = await opened(one);
  const broken = book(() => Promise.reject(new Error("engine stopped")));
  await broken.load();
  await broken.write(batchId, "ready_checked", {});
  await broken.refresh(batchId);
  expect(broken.batches.value.get(batchId)?.failure).toContain("engine stopped");
  expect(await store.events.eventsOf(batchStream(batchId))).toHaveLength(2);
});

test("what is decided as a slab is felt to be soft stands in the event, with the engine's version", async () => {
  const one = book();
  const batchId = await opened(one);
  await one.write(batchId, "poured", {});
  nowMs += 40 * 60_000;
  const event = await one.write(batchId, "touched", { firm: false });
  const decided = event.body["decided"] as { engine: string; again_ms: number };
  expect(decided.engine).not.toBe("");
  expect(decided.again_ms).toBeGreaterThan(nowMs);
  await one.refresh(batchId);
  expect(one.batches.value.get(batchId)?.run?.["cool"]).toMatchObject({ touches: [{ firm: false }] });
  expect((await one.write(batchId, "noted", { text: "soft" })).body).toEqual({ text: "soft" });
});

test("what paper says is decided as it is typed back, each fact after those before it", async () => {
  const one = book();
  const batchId = await opened(one);
  const facts = [
    { kind: "poured", body: {}, at_ms: T0 + 1000 },
    { kind: "touched", body: { firm: false }, at_ms: T0 + 3_600_000 },
  ];
  await one.writeAll(batchId, one.batches.value.get(batchId)!.run!, facts);
  const bodies = (await store.events.eventsOf(batchStream(batchId))).map((event) => event.body);
  expect(bodies[1]).toEqual({});
  expect(bodies[2]).toMatchObject({ firm: false, decided: { again_ms: expect.any(Number) } });
});

test("an engine that does not answer holds no fact back", async () => {
  const one = book();
  const batchId = await opened(one);
  const silent = book(() => new Promise(() => {}));
  await silent.load();
  const event = await silent.write(batchId, "touched", { firm: false });
  expect(event.body).toEqual({ firm: false });
  expect(event.at_ms).toBe(nowMs + 1);
});

test("a fact that finds no room leaves the bench as it was", async () => {
  const one = book();
  const batchId = await opened(one);
  await press(one, batchId);
  const before = one.batches.value.get(batchId);
  const events = Object.assign(Object.create(store.events) as Store["events"], { append: () => Promise.reject(new Error("no room")) });
  const other = book(compute, { ...store, events });
  other.batches.value = one.batches.value;
  await expect(other.write(batchId, "weighed", { kg: 1.8 })).rejects.toThrow("no room");
  expect(other.batches.value.get(batchId)).toEqual(before);
});

/** Makes a place of the engine as wrong as a forgotten argument does, while something is done. */
async function mistaken(place: string, name: string, work: () => Promise<void>): Promise<void> {
  inEngine(`import engine
place = engine.${place}
sound = place["${name}"]
def mistaken(*more):
    return None + 1
place["${name}"] = mistaken`);
  try {
    await work();
  } finally {
    inEngine(`place["${name}"] = sound`);
  }
}

test("a mistake in a fold is told as one, loses no event and stops no other batch", async () => {
  const one = book();
  const [batchId, other] = [await opened(one), await opened(one)];
  await mistaken("FOLDS_batch_folds", "freed", async () => {
    await one.write(batchId, "freed", {});
    await one.refresh(batchId);
    await press(one, other);
  });
  expect(one.batches.value.get(batchId)?.failure).toContain("TypeError");
  expect(one.batches.value.get(other)).toMatchObject({ failure: null, pending: false, advice: { step: "weigh" } });
  expect((await store.events.eventsOf(batchStream(batchId))).map((event) => event.kind)).toEqual(["batch_opened", "freed"]);
  await one.refresh(batchId);
  expect(one.batches.value.get(batchId)).toMatchObject({ failure: null, advice: { step: "flip" } });
});

test("a mistake in what is said next is told as one, at once and when time has passed", async () => {
  const one = book();
  const batchId = await opened(one);
  await mistaken('KIND_OF["slab"].pages', "set_up", () => one.look(batchId));
  expect(one.batches.value.get(batchId)).toMatchObject({ failure: expect.stringContaining("TypeError"), advice: { step: "set_up" } });
  await one.refresh(batchId);
  expect(one.batches.value.get(batchId)?.failure).toBeNull();
  await mistaken('KIND_OF["slab"].pages', "flip", async () => {
    await one.write(batchId, "freed", {});
    await one.refresh(batchId);
  });
  expect(one.batches.value.get(batchId)?.failure).toContain("TypeError");
  expect(one.batches.value.get(batchId)?.events).toHaveLength(2);
});

test("a batch that breaks before it was ever folded is on the bench with what was told of it", async () => {
  const one = book();
  const batchId = await opened(one);
  await one.write(batchId, "freed", {});
  const served = (await store.events.eventsOf(batchStream(batchId))).map((event, index) => ({ ...event, position: index + 1, received_ms: T0 }));
  const elsewhere = await openStore(T0, `book-${++names}`);
  await elsewhere.events.mergePulled(served, null);
  const other = book(compute, elsewhere);
  await mistaken("FOLDS_batch_folds", "freed", () => other.refresh(batchId));
  const shown = other.batches.value.get(batchId);
  expect(shown).toMatchObject({ run: null, failure: expect.stringContaining("TypeError") });
  expect(shown?.events).toHaveLength(2);
});

test("a mistake in a planner is a failure of the engine with type and trace, a wrong request stays a problem", async () => {
  const request = plan.kind === "slab" ? plan.request : null;
  await mistaken("FUNCTIONS_bench_catalogue", "slab.plan", async () => {
    const failed = compute("slab.plan", request!);
    await expect(failed).rejects.toThrow(EngineFailure);
    await expect(failed).rejects.toMatchObject({ fault: { type: "TypeError", trace: expect.stringContaining("mistaken") } });
    await expect(compute("slab.plan", { ...request!, slab_height_m: -1 })).rejects.toThrow(EngineProblem);
  });
  expect((await compute("slab.plan", request!)).caramel_kg).toBeGreaterThan(1);
});

test("an event refused by the server leaves the fold", async () => {
  const one = book();
  const batchId = await opened(one);
  await press(one, batchId);
  const last = one.batches.value.get(batchId)!.events.at(-1)!;
  await store.events.markSent([{ id: last.id, result: "refused", code: "malformed" }], "0.1.0");
  await one.refresh(batchId);
  expect(one.batches.value.get(batchId)?.advice?.step).toBe("set_up");
});

test("a batch goes on though another phone wrote of the year 5138, and leaves the bench when its opening lies there", async () => {
  const one = book();
  const batchId = await opened(one);
  const [opening] = await store.events.eventsOf(batchStream(batchId));
  const far = { ...opening!, id: uuid7(T0), device_id: "another", kind: "noted", body: { text: "x" }, at_ms: 1e14 };
  await store.events.mergePulled([{ ...far, position: 1, received_ms: T0 }], { cursor: 1, cursor_mark: null });
  await one.refresh(batchId);
  await press(one, batchId);
  expect(one.batches.value.get(batchId)).toMatchObject({ pending: false, run: { ignored: [], last_at_ms: T0 + 1000 } });
  await store.events.mergePulled([{ ...opening!, position: 2, received_ms: T0 - 2 * 86_400_000 }], { cursor: 2, cursor_mark: null });
  await one.refresh(batchId);
  expect(one.batches.value.size).toBe(0);
});

test("events of a batch whose opening has not arrived wait for it", async () => {
  const one = book();
  const batchId = uuid7(T0);
  await one.write(batchId, "ready_checked", {});
  await one.refresh(batchId);
  expect(one.batches.value.size).toBe(0);
});

function taps(one: BatchBook, ringing = false) {
  let rings = ringing;
  let armedAt = 0;
  return new TapRecorder({
    clock: () => nowMs,
    batch: (batchId) => one.batches.value.get(batchId),
    write: (batchId, kind, body) => one.write(batchId, kind, body),
    silence: () => {
      if (!rings) return false;
      rings = false;
      armedAt = nowMs + 700;
      return true;
    },
    armedAt: () => armedAt,
  });
}

test("a second tap within 700 ms writes nothing, whatever the button has become", async () => {
  const one = book();
  const batchId = await opened(one);
  const tap = taps(one);
  expect(await tap.record(batchId, "ready_checked", {})).toBe("written");
  await one.refresh(batchId);
  nowMs += 699;
  expect(await tap.record(batchId, "weighed", { kg: 1.8 })).toBe("ignored");
  nowMs += 1;
  expect(await tap.record(batchId, "weighed", { kg: 1.8 })).toBe("written");
});

test("two taps in the same instant write one event", async () => {
  const one = book();
  const batchId = await opened(one);
  const tap = taps(one);
  const both = await Promise.all([tap.record(batchId, "ready_checked", {}), tap.record(batchId, "ready_checked", {})]);
  expect(both.sort()).toEqual(["ignored", "written"]);
});

test("while a fold is under way the same button counts once, another button counts", async () => {
  const one = book();
  const batchId = await opened(one);
  const tap = taps(one);
  expect(await tap.record(batchId, "touched", { firm: false })).toBe("written");
  nowMs += 800;
  void one.write(batchId, "noted", { text: "a refit comes in" });
  expect(one.batches.value.get(batchId)?.pending).toBe(true);
  expect(await tap.record(batchId, "touched", { firm: false })).toBe("ignored");
  expect(await tap.record(batchId, "touched", { firm: true })).toBe("written");
});

test("the first tap while a clock rings only silences, and the button arms 700 ms later", async () => {
  const one = book();
  const batchId = await opened(one);
  const tap = taps(one, true);
  expect(await tap.record(batchId, "ready_checked", {})).toBe("silenced");
  nowMs += 500;
  expect(await tap.record(batchId, "ready_checked", {})).toBe("ignored");
  nowMs += 200;
  expect(await tap.record(batchId, "ready_checked", {})).toBe("written");
});

test("a tap that could not be kept may be tapped again at once", async () => {
  const one = book();
  const batchId = await opened(one);
  const tap = new TapRecorder({
    clock: () => nowMs,
    batch: (id) => one.batches.value.get(id),
    write: failsOnce(() => one.write(batchId, "ready_checked", {})),
    silence: () => false,
    armedAt: () => 0,
  });
  await expect(tap.record(batchId, "ready_checked", {})).rejects.toThrow("no room");
  expect(await tap.record(batchId, "ready_checked", {})).toBe("written");
});

/** Fails the first time, works from then on. */
function failsOnce(work: () => Promise<unknown>): () => Promise<unknown> {
  let failed = false;
  return () => {
    if (failed) return work();
    failed = true;
    return Promise.reject(new Error("no room"));
  };
}

test("undo takes back what it names", async () => {
  const one = book();
  const batchId = await opened(one);
  const tap = taps(one);
  await tap.record(batchId, "ready_checked", {});
  await one.refresh(batchId);
  nowMs += 1000;
  expect(await tap.undo(batchId)).toBe("written");
  await one.refresh(batchId);
  expect(one.batches.value.get(batchId)?.advice?.step).toBe("set_up");
  nowMs += 1000;
  expect(await tap.undo(batchId)).toBe("ignored");
});

test("a reading of the cooling slab is refitted once, and the reply is an event", async () => {
  const one = book();
  const batchId = await opened(one);
  const wanted = new PendingComputations(
    {
      deviceId: store.deviceId,
      compute: (name, request) => compute(name, request),
      write: (id, kind, body) => one.write(id, kind, body),
    },
    (id) => one.batches.value.get(id),
  );
  await one.write(batchId, "poured", {});
  nowMs += 40 * 60_000;
  await one.write(batchId, "slab_read", { surface_c: 45 });
  await one.refresh(batchId);
  expect(one.batches.value.get(batchId)?.advice?.wants?.name).toBe("cool.refit");
  wanted.check(batchId);
  wanted.check(batchId);
  for (let tries = 0; tries < 100 && one.batches.value.get(batchId)?.advice?.wants; tries++)
    await new Promise((done) => setTimeout(done, 50));
  const kinds = one.batches.value.get(batchId)!.events.map((event) => event.kind);
  expect(kinds.filter((kind) => kind === "cooling_refitted")).toHaveLength(1);
}, 30_000);

test("a batch of 400 events is folded again in one call", async () => {
  let calls: string[] = [];
  const one = book((name, request) => {
    calls.push(name);
    return compute(name, request);
  });
  const batchId = await opened(one);
  for (let n = 0; n < 400; n++) {
    nowMs += 1000;
    await store.events.append({
      id: uuid7(nowMs),
      shop_id: "shop",
      stream: batchStream(batchId),
      kind: "noted",
      body: { text: `note ${n}` },
      at_ms: nowMs,
      offset_ms: 0,
    });
  }
  calls = [];
  await one.refresh(batchId);
  expect(calls).toEqual(["run.replay", "run.advise"]);
  expect(one.batches.value.get(batchId)?.events).toHaveLength(401);
});

test("a kept batch is folded again by another engine only, and a record that is not shown stays so", async () => {
  const one = book();
  const batchId = await opened(one);
  const row = (await store.batches.get(batchId))!;
  expect(row.folded.engine_version).toBe("one");
  await store.batches.put({ ...row, run: null, closed_at_ms: T0 });
  nowMs = T0 + 24 * 3_600_000;
  const same = book();
  await same.load();
  expect(await same.foldOutdated()).toBe(false);
  expect((await store.batches.get(batchId))!.run).toBeNull();
  const renewed = book(compute, store, "two");
  await renewed.load();
  expect(await renewed.foldOutdated()).toBe(true);
  expect(await store.batches.get(batchId)).toMatchObject({ run: row.run, folded: { ...row.folded, engine_version: "two" } });
});

test("a batch of an app that kept no version is folded again", async () => {
  const batchId = await opened(book());
  const row = (await store.batches.get(batchId))!;
  const { engine_version: _, ...folded } = row.folded;
  await store.batches.put({ ...row, folded, run: null, closed_at_ms: T0 });
  nowMs = T0 + 24 * 3_600_000;
  expect(await book().foldOutdated()).toBe(true);
  expect((await store.batches.get(batchId))!.run).toEqual(row.run);
});

test("what is left of a series is known days after its last batch was closed, here or on another phone", async () => {
  const one = book();
  const [single, [first, other]] = [await opened(one), await Promise.all(["a", "b"].map(() => opened(one)))];
  const series = { first: null, number: 1, of: 2, next: [{ have: { kg: 1.8 } }] };
  for (const batchId of [first, single]) {
    const row = (await store.batches.get(batchId!))!;
    const kept = batchId === first ? { ...row.plan, series } : row.plan;
    await store.batches.put({ ...row, plan: kept, closed_at_ms: T0 });
  }
  nowMs = T0 + 3 * 24 * 3_600_000;
  const later = book();
  await later.load();
  expect(later.batches.value.has(first!)).toBe(false);
  expect([...later.seriesBefore.value.keys()]).toEqual([first]);
  expect(later.batches.value.has(other!)).toBe(true);
});

test("a batch of a series that comes closed from another phone is kept beside the running ones", async () => {
  const one = book();
  const batchId = uuid7(nowMs);
  const shared = { shop_id: "shop", stream: batchStream(batchId), offset_ms: 0 };
  const series = { first: null, number: 1, of: 2, next: [{ have: { kg: 1.8 } }] };
  const told: [string, Record<string, unknown>][] = [["batch_opened", { plan: { ...plan, series }, engine_version: "test" }], ["thrown_away", { reason: "burnt" }]];
  for (const [kind, body] of told) await store.events.append({ ...shared, id: uuid7(nowMs), kind, body, at_ms: ++nowMs });
  await one.refresh(batchId);
  expect(one.batches.value.has(batchId)).toBe(false);
  expect(one.seriesBefore.value.get(batchId)?.run?.closed_at_ms).toBeGreaterThan(T0);
  await one.write(batchId, "series_ended", { ended: true });
  await one.refresh(batchId);
  expect(one.seriesBefore.value.get(batchId)?.run?.series_ended).toBe(true);
});
