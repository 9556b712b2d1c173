/** Names of batches: those of one evening differ by a letter, whatever they are made of and whoever opened them. */
import type { Summary } from "../documents";
import { openedMs } from "./batchBook";
import type { Batch } from "./types";

/** Batches that were opened further apart than this are not of one evening (ms). Assumed. */
const EVENING_MS = 12 * 3_600_000;
const LETTERS = [..."BCDEFGHIJKLMNOPQRSTUVWXYZ"];

type Named = Pick<Summary, "name" | "opened_at_ms">;

/** "Squares", or with the first letter that nobody has this evening: "Pecan clusters B", "Squares C". */
export function freeName(product: string, others: Named[], opened_ms: number): string {
  const near = others.filter((one) => Math.abs(one.opened_at_ms - opened_ms) < EVENING_MS).map(({ name }) => name);
  if (near.length === 0) return product;
  const taken = near.map((name) => / ([B-Z])$/.exec(name)?.[1]);
  const numbered = LETTERS.find((letter) => !taken.includes(letter)) ?? `${near.length + 1}`;
  return `${product} ${numbered}`;
}

/** What a batch that this device opened must be called from now on, because one opened before it has its name: two
 * phones that were both off line may have given it twice, and the later batch gives way. One at a time: the next is looked
 * for when this one is in the log; null: all names differ, or not all is folded yet. */
export function renaming(shown: Batch[], deviceId: string): { batchId: string; name: string } | null {
  if (shown.some(({ run, pending }) => run === null || pending)) return null;
  const named = shown.map((one) => ({ batchId: one.batchId, name: one.plan.name, opened_at_ms: openedMs(one.events), mine: openedBy(one, deviceId) }));
  const order = named.sort((a, b) => a.opened_at_ms - b.opened_at_ms || (a.batchId < b.batchId ? -1 : 1));
  const isTwin = (one: Named, other: Named) => one.name === other.name && one.opened_at_ms - other.opened_at_ms < EVENING_MS;
  const clash = order.find((one, index) => one.mine && order.slice(0, index).some((other) => isTwin(one, other)));
  return clash ? { batchId: clash.batchId, name: freeName(clash.name.replace(/ [B-Z]$/, ""), order, clash.opened_at_ms) } : null;
}

function openedBy({ events }: Batch, deviceId: string): boolean {
  return events.some((one) => one.kind === "batch_opened" && one.device_id === deviceId);
}
