/** Which open batches hands are at, and the clocks that run for them. */
import { correctedMs } from "../order";
import { isOpen } from "./batchBook";
import type { Running } from "./runningClocks";
import type { Batch } from "./types";

/** A batch nobody has touched for so long is not at work (ms). */
const AT_WORK_MS = 12 * 3_600_000;

/** Whether somebody is at work on a batch at an instant (ms). */
export function isAtWork(batch: Batch, now_ms: number): boolean {
  const newest = batch.events.at(-1);
  return isOpen(batch) && newest !== undefined && correctedMs(newest) > now_ms - AT_WORK_MS;
}

/** The clocks of an open batch. Held back while the fold of a fresh event is on its way. */
export function runningClocks(batch: Batch): Running[] {
  if (!batch.advice || !isOpen(batch)) return [];
  const held = batch.pending && batch.failure === null;
  return batch.advice.clocks.map((clock) => ({ batchId: batch.batchId, clock, held }));
}
