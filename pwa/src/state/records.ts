import { computed, type ReadonlySignal, signal } from "@preact/signals";

import type { BenchEvent, PlanDocument, Run, Summary } from "../documents";
import { compute } from "../engine/client";
import type { Store } from "../storage";
import { batchStream } from "../streams";
import { httpApi } from "../sync/api";
import { openedMs, planOf, renamed } from "./batchBook";
import { batchForWorker } from "./replayRequest";
import { sync } from "./syncing";
import type { Batch, BatchRecord } from "./types";

/** Summaries as the server last gave them. */
const known = signal<Summary[]>([]);

/** All summaries, newest first: those of the server, and of this phone's batches what the phone knows of them. */
export function summariesWith(batches: ReadonlySignal<Map<string, Batch>>): ReadonlySignal<Summary[]> {
  return computed(() => {
    const all = new Map(known.value.map((one) => [one.batch_id, one]));
    for (const batch of batches.value.values()) {
      const own = summaryOf(batch.batchId, batch.plan, batch.run, batch.events, batch.advice?.step ?? "");
      all.set(batch.batchId, own);
    }
    return [...all.values()].sort((a, b) => b.opened_at_ms - a.opened_at_ms);
  });
}

/** Keeps what the server gave, on the screen and for the next start. */
export async function takeSummaries(store: Store, summaries: Summary[]): Promise<void> {
  const all = new Map([...known.value, ...summaries].map((one) => [one.batch_id, one]));
  known.value = [...all.values()];
  await store.meta.put("summaries", known.value);
}

/** As the server last gave them; of a batch that was closed here and that it gave as open or not at all, as the phone kept it. */
export async function loadSummaries(store: Store): Promise<void> {
  const all = new Map(((await store.meta.get<Summary[]>("summaries")) ?? []).map((one) => [one.batch_id, one]));
  for (const row of await store.batches.all()) {
    if (row.closed_at_ms === null || (all.get(row.batch_id)?.closed_at_ms ?? null) !== null) continue;
    const own = summaryOf(row.batch_id, row.plan, row.run, [], row.advice?.step ?? "");
    all.set(row.batch_id, { ...own, opened_at_ms: row.opened_at_ms, events: row.folded.count });
  }
  known.value = [...all.values()];
}

/** As long as a lot may be open: what older batches took is over with it. */
const KEPT_MS = 400 * 86_400_000;

/** Asks the server for the newest list, page by page: at first all that lots still open may have gone into, then until a page has
 * nothing new. Without a server, what is known stays. */
export async function refreshSummaries(store: Store, nowMs: number): Promise<void> {
  try {
    const isWhole = await store.meta.get<boolean>("summaries_whole");
    const found: Summary[] = [];
    const had = new Set(known.value.map((one) => one.batch_id));
    for (let before: string | null = null; ; ) {
      const { batches, more } = await httpApi.batches(before);
      found.push(...batches);
      const last = batches.at(-1);
      const isEnough = isWhole && batches.every((one) => had.has(one.batch_id));
      if (!more || !last || isEnough || last.opened_at_ms < nowMs - KEPT_MS) break;
      before = last.batch_id;
    }
    await takeSummaries(store, found);
    await store.meta.put("summaries_whole", true);
  } catch {
    // Not reachable: the list as it was last seen.
  }
}

/** One batch to look back at. The phone's own copy counts while it has facts that the server has not. */
export async function loadRecord(store: Store, batchId: string): Promise<BatchRecord | null> {
  const unsent = (await store.events.unsent()).some((event) => event.batch_id === batchId);
  const mine = () => ownRecord(store, batchId);
  if (unsent || sync.value.reachable === false) return (await mine()) ?? serverRecord(batchId);
  return (await serverRecord(batchId)) ?? mine();
}

async function serverRecord(batchId: string): Promise<BatchRecord | null> {
  try {
    const { summary, plan, run, broken, events, set_aside } = await httpApi.batch(batchId);
    if (broken) console.error("the server could not fold it:", batchId, broken);
    return plan && run ? { summary, plan: renamed(plan, run), run, events, setAside: set_aside ?? [] } : null;
  } catch {
    return null;
  }
}

async function ownRecord(store: Store, batchId: string): Promise<BatchRecord | null> {
  const events = await store.events.eventsOf(batchStream(batchId));
  const plan = planOf(events);
  if (!plan) return null;
  const { run } = await compute("run.replay", batchForWorker(plan, events), "desk");
  const step = (await store.batches.get(batchId))?.advice?.step ?? "";
  const setAside = (await store.events.setAside()).filter((one) => one.batch_id === batchId);
  return { summary: summaryOf(batchId, plan, run, events, step), plan: renamed(plan, run), run, events, setAside };
}

/** As the engine makes it (batch/label.py). */
function labelOfRun(run: Run): Summary["label"] {
  const { contains = [], uses = [], labels_known = false, may_contain = [], thrown_away, lot, cluster } = run;
  const under_lots = (cluster?.under_lots ?? []).flatMap(({ material, lot: named }) => (named ? [{ material, lot: named }] : []));
  return { lot, uses, contains, labels_known, may_contain, under_lots, thrown_away: thrown_away?.reason ?? null } as Summary["label"];
}

/** As the server makes it (services/batches.py). */
function summaryOf(
  batch_id: string,
  plan: PlanDocument,
  run: Run | null,
  events: BenchEvent[],
  step: string,
): Summary {
  const counted = run?.pieces ?? null;
  return {
    batch_id,
    name: run?.name || plan.name,
    kind: plan.kind,
    opened_at_ms: openedMs(events),
    closed_at_ms: run?.closed_at_ms ?? null,
    step,
    pieces: counted ?? run?.planned.pieces ?? null,
    caramel_kg: run?.weighed_kg ?? run?.planned.caramel_kg ?? null,
    good_kg: counted === null ? null : counted * (run?.planned.piece_kg ?? 0),
    device_id: events[0]?.device_id ?? "",
    events: events.length,
    label: run && labelOfRun(run),
  };
}
