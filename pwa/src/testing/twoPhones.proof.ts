// @vitest-environment node
/** Two phones and the server, one batch, chance: whatever the network, the clocks and the hands do, all three end in the
 * same run; nothing is counted twice and nothing is lost. Run by e2e/test_interleavings.py, which starts the server. */
import "fake-indexeddb/auto";
import { beforeAll, expect, test } from "vitest";

import type { BenchEvent, PlanDocument, Run, SlabRun, Values } from "../documents";
import { inOrder } from "../order";
import { batchStream } from "../streams";
import { httpApi } from "../sync/api";
import { Chance } from "./chance";
import { realEngine } from "./engine";
import { PhoneUser, type StorySetup } from "./phoneUser";
import { Network } from "./network";

const SERVER = process.env["AMBERBENCH_PROOF_SERVER"] ?? "";
const RUNS = Number(process.env["AMBERBENCH_PROOF_RUNS"]);
const SEED = Number(process.env["AMBERBENCH_PROOF_SEED"]);
/** In the past of any server: what lies more than a day ahead of its clock is set aside. */
const NINE_MS = Date.now() - 30 * 86_400_000;
const STEPS = 45;
const MOST_IGNORED = 50;
/** What people do though no button offers it just now, or from another phone's screen. */
const WILD: [string, Values][] = [
  ["burst_ended", {}],
  ["stirred", { free: true }],
  ["read", { surface_c: 70 }],
  ["poured", {}],
  ["slab_read", { surface_c: 50 }],
  ["touched", { firm: false }],
  ["freed", {}],
  ["counted", { pieces: 190 }],
  ["weighed_out", { kg: 0.1, what: "rest" }],
  ["noted", { text: "sticky" }],
];

let setup: StorySetup;
let plan: PlanDocument;
const totals = { events: 0, ignored: 0, undone: 0, twins: 0, full: 0, outcomes: {} as Record<string, number> };

beforeAll(async () => {
  const compute = await realEngine();
  const request = { have: { kg: 1.8 }, slab_height_m: 0.01, piece_length_m: 0.024, piece_width_m: 0.024, bars_m: [0.01], oven: { rated_w: 1000 } };
  const reply = await compute("slab.plan", request);
  plan = { kind: "slab", name: "Invented", prebottom: false, product_id: null, oven_id: null, base_id: null, lot: null, request, reply };
  setup = { compute } as StorySetup;
}, 60_000);

test(`${RUNS} stories of two phones end in one run`, { timeout: 3_600_000 }, async () => {
  for (let run = 0; run < RUNS; run++) {
    try {
      await story(SEED + run);
    } catch (error) {
      throw new Error(`story ${SEED + run}: ${String(error)}`, { cause: error });
    }
  }
  console.log(JSON.stringify({ stories: RUNS, ...totals }));
  expect(totals.ignored).toBeGreaterThan(0);
  expect(totals.undone).toBeGreaterThan(0);
  expect(totals.twins).toBeGreaterThan(0);
  expect(totals.full).toBeLessThan(0.02 * RUNS + 1);
});

async function story(seed: number): Promise<void> {
  const chance = new Chance(seed);
  const network = new Network(SERVER, chance);
  network.nowMs = NINE_MS;
  network.isTheOnlyOne();
  setup = { ...setup, chance, network, written: new Map() };
  const users = [new PhoneUser(setup, `one-${seed}`), new PhoneUser(setup, `other-${seed}`)] as const;
  const wrong = chance.happens(0.4);
  for (const user of users) {
    if (chance.happens(0.7)) user.errorMs = Math.round(chance.between(-2, 2) * 3_600_000);
    await user.opens();
    network.trouble = false;
    await user.exchanges();
    network.trouble = true;
    // Some start with a clock that nobody has ever set right.
    if (!wrong) user.setsItsClock();
  }
  const batchId = await users[0].plans(plan);
  const twins = await interleave(users, batchId, wrong);
  network.trouble = false;
  network.meanwhile = () => Promise.resolve();
  for (const user of [...users, ...users]) expect(await user.exchanges()).toBe(true);
  await agree(users, batchId, twins);
  for (const [outcome, count] of Object.entries(network.outcomes)) totals.outcomes[outcome] = (totals.outcomes[outcome] ?? 0) + count;
  // The next story's phones start from the open batches only.
  network.nowMs += 1000;
  await users[0].does(batchId, "closed", {});
  await users[0].exchanges();
}

type Twin = [string, string];

/** Chance at work; the pairs of events that were the same step, tapped on both phones. */
async function interleave(users: readonly [PhoneUser, PhoneUser], batchId: string, wrong: boolean): Promise<Twin[]> {
  const { chance, network } = setup;
  const twins: Twin[] = [];
  let clocksAreRight = !wrong;
  const busy = () => (chance.happens(0.15) ? tap(chance.oneOf(users), batchId) : Promise.resolve());
  network.meanwhile = busy;
  for (let step = 0; step < STEPS; step++) {
    network.nowMs += Math.floor(chance.happens(0.1) ? chance.between(60_000, 1_800_000) : chance.between(800, 65_000));
    const user = chance.oneOf(users);
    const dice = chance.next();
    if (dice < 0.55) await tap(user, batchId);
    else if (dice < 0.65) {
      const pairs = await together(users, batchId);
      if (clocksAreRight) twins.push(...pairs);
    } else if (dice < 0.92) await user.exchanges();
    else if (dice < 0.96) await user.opens();
    else if (dice < 0.98) user.setsItsClock();
    else {
      user.errorMs += Math.round(chance.between(-1, 1) * 600_000);
      clocksAreRight = false;
    }
  }
  return twins;
}

/** One hand does something: what its screen offers, mostly. */
async function tap(user: PhoneUser, batchId: string): Promise<void> {
  const { chance } = setup;
  if (!user.batch(batchId)) return;
  const dice = chance.next();
  if (!user.hasIt(batchId) && dice < 0.5) return void (await user.does(batchId, "taken_over", {}));
  if (dice < 0.06) return void (await user.does(batchId, "undone", {}));
  if (dice < 0.14) return void (await user.does(batchId, ...chance.oneOf(WILD)));
  const button = await user.sees(batchId);
  if (button) await user.does(batchId, button.kind, button.body);
}

/** Two phones that know the same go off line, and two hands tap the same steps on both, half a second apart. */
async function together([one, other]: readonly [PhoneUser, PhoneUser], batchId: string): Promise<Twin[]> {
  const { chance, network } = setup;
  const pairs: Twin[] = [];
  const ids = (user: PhoneUser) => (user.batch(batchId)?.events ?? []).map((event) => event.id).join();
  for (const user of [one, other, one, other, one]) await user.exchanges();
  if (ids(one) !== ids(other) || ids(one) === "") return pairs;
  for (let steps = Math.ceil(chance.between(0, 8)); steps > 0; steps--) {
    network.nowMs += Math.floor(chance.between(5_000, 70_000));
    const button = await one.sees(batchId);
    const same = button && (await other.seesAlso(batchId, button));
    if (!same || button.kind === "lot_named") break;
    const first = await one.does(batchId, button.kind, button.body);
    network.nowMs += Math.floor(chance.between(0, 500));
    const second = await other.does(batchId, same.kind, same.body);
    if (!first || !second) break;
    pairs.push([first, second]);
  }
  return pairs;
}

async function agree(users: readonly [PhoneUser, PhoneUser], batchId: string, twins: Twin[]): Promise<void> {
  const record = await httpApi.batch(batchId);
  if (!record.run) throw new Error("the server could not fold the batch");
  const wanted = [...setup.written.values()].sort(inOrder);
  const onServer = record.events.map(({ id, kind, body, at_ms, offset_ms, seq, device_id }) => [id, kind, body, at_ms, offset_ms, seq, device_id]);
  expect(onServer).toEqual(wanted.map(({ id, kind, body, at_ms, offset_ms, seq, device_id }) => [id, kind, body, at_ms, offset_ms, seq, device_id]));
  for (const user of users) {
    expect(await user.store.events.unsentCount()).toBe(0);
    expect((await user.store.events.eventsOf(batchStream(batchId))).map((event) => event.id)).toEqual(wanted.map((event) => event.id));
    // One that was closed before the app was opened again is not among the running ones: what it keeps counts.
    same((await user.store.batches.get(batchId))?.run, record.run, "run");
  }
  countedOnce(record.run, wanted, twins);
}

/** Two documents say the same; figures to nine digits, for the phone's Python writes fewer of them than the server's. */
function same(mine: unknown, theirs: unknown, path: string): void {
  if (typeof mine === "number" && typeof theirs === "number") {
    if (Math.abs(mine - theirs) > 1e-9 * Math.max(1, Math.abs(theirs))) throw new Error(`${path}: ${mine} is not ${theirs}`);
  } else if (mine !== null && theirs !== null && typeof mine === "object" && typeof theirs === "object") {
    expect(Object.keys(mine).sort(), path).toEqual(Object.keys(theirs).sort());
    for (const [name, value] of Object.entries(mine)) same(value, (theirs as Values)[name], `${path}.${name}`);
  } else expect(mine, path).toBe(theirs);
}

/** Each event is in the run once, or ignored with a reason, or taken back; of two hands at one step, one counts. */
function countedOnce(run: Run, events: BenchEvent[], twins: Twin[]): void {
  const ignored = new Set(run.ignored.map((one) => one.id));
  const undone = new Set(events.filter((event) => event.kind === "undone").map((event) => event.body["event_id"]));
  const counts = (event: BenchEvent) => !ignored.has(event.id) && !undone.has(event.id);
  const counted = (kind: string) => events.filter((event) => event.kind === kind && counts(event));
  const { melt, cool, out } = run as SlabRun & { melt: { history: { kind: string }[] } };
  // A run names so many of the ignored and no more (run.py): past that nobody can tell which they were.
  if (run.ignored.length === MOST_IGNORED) return void (totals.full += 1);
  expect(melt.bursts.length).toBe(counted("stirred").length);
  expect([0, 1]).toContain(counted("burst_started").length - melt.bursts.length);
  expect(melt.history.filter((one) => one.kind === "reading")).toHaveLength(counted("read").length);
  expect(cool.readings).toHaveLength(counted("slab_read").length);
  expect(cool.touches).toHaveLength(counted("touched").length);
  expect(out).toHaveLength(counted("weighed_out").length);
  for (const kind of ["batch_opened", "ready_checked", "weighed", "poured", "freed", "cut", "counted", "closed"])
    expect(counted(kind).length, kind).toBeLessThanOrEqual(1);
  for (const pair of twins) {
    const both = events.filter((event) => pair.includes(event.id));
    expect(both.filter(counts).length, `${both[0]?.kind} by two hands`).toBeLessThanOrEqual(1);
  }
  totals.events += events.length;
  totals.ignored += ignored.size;
  totals.undone += undone.size;
  totals.twins += twins.length;
}
