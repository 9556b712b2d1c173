import type { BenchEvent, Lot } from "../documents";
import { correctedMs } from "../order";

/** Between two taps that lie further apart than this nobody was at the batch (ms; assumed). */
const AWAY_MS = 5 * 60_000;

/** Hands on a batch, from its log (s): the times between taps that lie close together. */
export function handsOf(events: BenchEvent[]): number {
  const at = events.map(correctedMs).sort((a, b) => a - b);
  return at.slice(1).reduce((sum, ms, nth) => sum + (ms - at[nth]! <= AWAY_MS ? ms - at[nth]! : 0), 0) / 1000;
}

/** The delivery whose price counts: that of the lot typed at the bench, else the last with a price of the same material. */
export function pricedLot(all: Iterable<Lot>, material: string | null, typed: string | null, currency: string): Lot | null {
  const named = typed?.trim().toLowerCase();
  const fit = [...all].filter((lot) => lot.price_minor !== null && lot.amount > 0 && lot.currency === currency && lot.material === material);
  const newest = fit.sort((a, b) => (b.received_ms ?? 0) - (a.received_ms ?? 0));
  return newest.find((lot) => lot.supplier_lot.trim().toLowerCase() === named) ?? newest[0] ?? null;
}
