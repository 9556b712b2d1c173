import type { BenchEvent, CostBatchRequest, Lot, LotUse } from "../documents";
import { correctedMs } from "../order";

/** Between two taps that lie further apart than this nobody was at the batch (ms; assumed). */
const AWAY_MS = 5 * 60_000;

/** Hands on a batch, from its log (s): the times between taps that lie close together. */
export function handsOf(events: BenchEvent[]): number {
  const at = events.map(correctedMs).sort((a, b) => a - b);
  return at.slice(1).reduce((sum, ms, nth) => sum + (ms - at[nth]! <= AWAY_MS ? ms - at[nth]! : 0), 0) / 1000;
}

/** Whether a price is in the shop's currency, which "" stands for. */
const isIn = (lot: Lot, currency: string) => (lot.currency || currency) === currency;

/** The delivery whose price counts: that of the lot typed at the bench, else the last with a price of the same material. */
export function pricedLot(all: Iterable<Lot>, material: string | null, typed: string | null, currency: string, unit: Lot["unit"] = "kg"): Lot | null {
  const named = typed?.trim().toLowerCase();
  const fit = [...all].filter((lot) => lot.price_minor !== null && lot.amount > 0 && isIn(lot, currency) && lot.material === material && lot.unit === unit);
  const newest = fit.sort((a, b) => (b.received_ms ?? 0) - (a.received_ms ?? 0));
  return newest.find((lot) => lot.supplier_lot.trim().toLowerCase() === named) ?? newest[0] ?? null;
}

type Use = CostBatchRequest["uses"][number];

/** So much of a lot by its price; null: nobody knows one. */
export function pricedUse(name: string, amount: number, lot: Lot | null): Use {
  return { name, amount, lot_amount: lot?.amount ?? 1, lot_price_minor: lot?.price_minor ?? null };
}

/** What so much of a material cost: as much as was taken of lots by their own prices, the rest by that of the lot typed or of the last
 * delivery. `made`: what of a material no delivery brought (leftovers) costs what its last delivery did. */
export function pricedUses(name: string, amount: number, material: string | null, all: ReadonlyMap<string, Lot>, uses: LotUse[], typed: string | null, currency: string): Use[] {
  const usual = pricedLot(all.values(), material, typed, currency);
  const use = (kg: number, lot: Lot | null) => pricedUse(name, kg, lot);
  const taken = uses.flatMap((one) => {
    const lot = all.get(one.lot_id);
    const own = lot && lot.price_minor !== null && lot.amount > 0 && isIn(lot, currency);
    return lot && lot.material === material ? [use(one.amount, own ? lot : lot.unit === "kg" ? usual : null)] : [];
  });
  // What was taken by the piece has no weight that could be taken off.
  const counted = uses.some(({ lot_id }) => all.get(lot_id)?.material === material && all.get(lot_id)?.unit === "each");
  const rest = counted ? 0 : amount - taken.reduce((sum, one) => sum + one.amount, 0);
  return rest > LEAST || taken.length === 0 ? [...taken, use(Math.max(0, rest), usual)] : taken;
}

/** What no scale of a shop shows (kg). */
const LEAST = 1e-6;
