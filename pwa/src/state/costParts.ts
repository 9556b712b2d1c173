import type { BenchEvent, CostBatchRequest, Lot, LotUse } from "../documents";
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

type Use = CostBatchRequest["uses"][number];

/** What so much of a material cost: as much as was taken of lots by their own prices, the rest by that of the lot typed or of the last
 * delivery. `made`: what of a material no delivery brought (leftovers) costs what its last delivery did. */
export function pricedUses(name: string, amount: number, material: string | null, all: ReadonlyMap<string, Lot>, uses: LotUse[], typed: string | null, currency: string): Use[] {
  const usual = pricedLot(all.values(), material, typed, currency);
  const use = (kg: number, lot: Lot | null): Use => ({ name, amount: kg, lot_amount: lot?.amount ?? 1, lot_price_minor: lot?.price_minor ?? null });
  const taken = uses.flatMap((one) => {
    const lot = all.get(one.lot_id);
    const own = lot && lot.price_minor !== null && lot.amount > 0 && lot.currency === currency;
    return lot && lot.material === material ? [use(one.amount, own ? lot : usual)] : [];
  });
  const rest = amount - taken.reduce((sum, one) => sum + one.amount, 0);
  return rest > LEAST || taken.length === 0 ? [...taken, use(Math.max(0, rest), usual)] : taken;
}

/** What no scale of a shop shows (kg). */
const LEAST = 1e-6;
