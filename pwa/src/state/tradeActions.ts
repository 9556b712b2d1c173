/** What the screens of orders, stock and packing ask for and write down. */
import type { BenchEvent, CostBoxReply, CostMonthsReply, LabelContentReply, Pack, PackBoxesReply, Shop, Summary, TraceWalkReply, Values } from "../documents";
import * as boxLabel from "./boxLabel";
import * as costs from "./costs";
import * as packing from "./packing";
import { findWaiting, keepWaiting, type NoPhoto } from "./photos";
import { loadRecord, refreshSummaries } from "./records";
import { shop } from "./shop";
import { appState } from "./start";
import { correctedNow } from "./time";
import * as tracing from "./tracing";
import * as trade from "./trade";

/** Folds the orders, lots and boxes packed of this phone, the first time. */
export async function loadTrade(): Promise<void> {
  const { trade: { lot, order, pack }, store } = await appState();
  const rows = await store.batches.all();
  trade.keptUses.value = new Map(rows.map(({ batch_id, run }) => [batch_id, run?.uses ?? []]));
  if (!askedForUses) void refreshSummaries(store, correctedNow());
  askedForUses = true;
  await Promise.all([lot.load(), order.load(), pack.load()]);
}

/** What batches took that other phones ran, or that this one has forgotten, the server says: asked once a start. */
let askedForUses = false;

/** Writes what happened of a lot, an order or boxes packed; resolves when it is on the disk and in the document. */
export async function writeFact(of: "lot" | "order" | "pack", id: string, kind: string, body: Values): Promise<void> {
  await (await appState()).trade[of].write(id, [{ kind, body }]);
}

/** What boxes a counted batch fills. */
export async function boxesOf(first: packing.Counted, wanted: packing.Wanted): Promise<PackBoxesReply> {
  return packing.boxesOf((await appState()).store, first, wanted);
}

/** What a box of one or several products costs, by the batches counted last on this phone. */
export async function boxCost(known: Shop, box: Pick<Shop["boxes"][number], "lines" | "packaging">): Promise<CostBoxReply> {
  return costs.boxCost((await appState()).store, known, box);
}

/** Yield, cost and time of closed batches, month by month. */
export async function byMonth(known: Shop, batches: Summary[]): Promise<CostMonthsReply & { waiting: number }> {
  const { store } = await appState();
  const closed = batches.filter((one) => one.closed_at_ms !== null && !one.label?.thrown_away);
  return costs.byMonth(store, known, closed, (batchId) => loadRecord(store, batchId));
}

/** What went into something and what came of it, by what this phone holds. */
export async function traceHere(start: string): Promise<TraceWalkReply> {
  return tracing.traceHere((await appState()).store, start);
}

/** Takes back what was written last of a lot, an order or boxes packed; false: there is nothing to take back. */
export async function undoLastFact(of: "lot" | "order" | "pack", id: string): Promise<boolean> {
  const book = (await appState()).trade[of];
  const events = await book.events(id);
  const undone = new Set(events.filter((one) => one.kind === "undone").map((one) => one.body["event_id"]));
  const last = events.slice(1).filter((one) => one.kind !== "undone" && !undone.has(one.id)).at(-1);
  if (last) await book.write(id, [{ kind: "undone", body: { event_id: last.id } }]);
  return last !== undefined;
}

/** What was written of a lot, an order or boxes packed, as far as this phone holds it. */
export async function streamEvents(of: "lot" | "order" | "pack", id: string): Promise<BenchEvent[]> {
  return (await appState()).trade[of].events(id);
}

/** What the label of boxes packed together says, by what went into them. Throws EngineProblem. */
export async function labelContent(pack: Pack, choices: boxLabel.LabelChoices): Promise<LabelContentReply> {
  const known = shop.value;
  if (!known) throw new Error("no shop yet");
  return boxLabel.labelContent((await appState()).store, known, pack, choices);
}

/** What labels were printed on last; null: nothing yet. */
export async function keptPaper(): Promise<unknown> {
  return boxLabel.keptPaper((await appState()).store);
}

export async function keepPaper(paper: unknown): Promise<void> {
  await boxLabel.keepPaper((await appState()).store, paper);
}

/** Keeps a photo of a lot's label, made smaller. Never rejects for the photo. */
export async function takeLotPhoto(lotId: string, file: Blob): Promise<BenchEvent | NoPhoto> {
  return (await appState()).lotPhotos.take(lotId, file);
}

/** Keeps the photo of a delivery that is not written down yet; null: there is none any more. */
export async function keepWaitingPhoto(file: Blob | null): Promise<NoPhoto | "kept"> {
  return keepWaiting((await appState()).store, file);
}

export async function waitingPhoto(): Promise<Blob | null> {
  return findWaiting((await appState()).store);
}
