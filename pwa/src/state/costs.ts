/** What a batch and its boxes cost, from what went in, the prices of deliveries and the time of hands. */
import type { BenchEvent, CostBatchReply, CostPriceReply, PlanDocument, Run, Shop } from "../documents";
import { compute } from "../engine/client";
import { partsOf } from "./batchParts";
import { handsOf, pricedLot, pricedUses } from "./costParts";
import { boughtMaterials, lots } from "./trade";

/** The cost of a counted batch, with the boxes of its product. Chocolate, what lies under and salt count as planned, but for what was
 * taken of lots. */
export async function costOf(known: Shop, plan: PlanDocument, run: Run, events: BenchEvent[]): Promise<CostBatchReply> {
  const { currency } = known;
  const all = lots.value;
  const weighed_kg = run.weighed_kg ?? run.planned.caramel_kg ?? 0;
  const typed = { caramels: run.lot, chocolates: run.dip?.bowls?.[0]?.lot ?? null, materials: null };
  const uses = (partsOf(known, plan, run) ?? []).flatMap(({ list, row, name, each_kg, lost_kg }) => {
    const amount = list === "caramels" ? weighed_kg : each_kg * (run.planned.pieces ?? 0) + lost_kg;
    return pricedUses(name, amount, row ? `${list}/${row.id}` : null, all, run.uses ?? [], typed[list], currency);
  });
  const each = run.planned.piece_kg ?? 0;
  const good_kg = (run.pieces ?? 0) * each;
  const boxes = known.boxes.filter((box) => box.lines.length === 1 && box.lines[0]!.product_id === plan.product_id);
  const packaging = (box: (typeof boxes)[number]) => box.packaging.map(({ material, amount }) => ({ material, amount, lot: pricedLot(all.values(), material, null, currency) }));
  const unpriced = new Set(boxes.flatMap((box) => packaging(box).flatMap(({ material, lot }) => (lot ? [] : [material]))));
  for (const material of unpriced) uses.push({ name: boughtMaterials().find((one) => one.material === material)?.name || material, amount: 0, lot_amount: 1, lot_price_minor: null });
  return compute(
    "cost.batch",
    {
      uses,
      waste_share: each > 0 && weighed_kg > 0 ? Math.min(1, Math.max(0, 1 - good_kg / weighed_kg)) : null,
      hands_s: handsOf(events),
      rate_minor_per_h: known.rate_minor_per_h,
      pieces: run.pieces ?? 0,
      boxes: boxes.map((box) => ({ name: box.id, pieces: box.lines[0]!.count, packaging_minor: Math.round(packaging(box).reduce((sum, { amount, lot }) => sum + (lot ? ((lot.price_minor ?? 0) * amount) / lot.amount : 0), 0)) })),
    },
    "desk",
  );
}

/** The margin of a price, and the price for a wanted margin (percent of the net price). */
export function priceOf(cost_minor: number, price_minor: number | null, margin_percent: number | null): Promise<CostPriceReply> {
  return compute("cost.price", { cost_minor: Math.max(0, cost_minor), price_minor, margin_percent }, "desk");
}
