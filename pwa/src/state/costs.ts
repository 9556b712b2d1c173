/** What a batch and its boxes cost, from what went in, the prices of deliveries and the time of hands. */
import type { BenchEvent, CostBatchReply, CostPriceReply, PlanDocument, Run } from "../documents";
import { compute } from "../engine/client";
import { handsOf, pricedLot } from "./costParts";
import { shop } from "./shop";
import { lots } from "./trade";

/** The cost of a counted batch, with the boxes of its product; `names`: what its parts are called. */
export async function costOf(plan: PlanDocument, run: Run, events: BenchEvent[], names: { caramel: string; chocolate: string; under: string }): Promise<CostBatchReply> {
  const currency = shop.value?.currency ?? "";
  const use = (name: string, amount: number, material: string | null, typed: string | null) => {
    const lot = pricedLot(lots.value.values(), material, typed, currency);
    return { name, amount, lot_amount: lot?.amount ?? 1, lot_price_minor: lot?.price_minor ?? null };
  };
  const weighed_kg = run.weighed_kg ?? run.planned.caramel_kg ?? 0;
  const uses = [use(names.caramel, weighed_kg, plan.caramel_id ? `caramels/${plan.caramel_id}` : null, run.lot)];
  // How much of these went on is not weighed at the bench: they are named as not priced, never left out in silence.
  if (run.dip) uses.push({ name: names.chocolate, amount: 0, lot_amount: 1, lot_price_minor: null });
  if (run.cluster) uses.push({ name: names.under, amount: 0, lot_amount: 1, lot_price_minor: null });
  const each = run.planned.piece_kg ?? 0;
  const good_kg = (run.pieces ?? 0) * each;
  const boxes = (shop.value?.boxes ?? []).filter((box) => box.lines.length === 1 && box.lines[0]!.product_id === plan.product_id);
  const packaging = (box: (typeof boxes)[number]) =>
    box.packaging.reduce((sum, one) => {
      const lot = pricedLot(lots.value.values(), one.material, null, currency);
      return sum + (lot ? ((lot.price_minor ?? 0) * one.amount) / lot.amount : 0);
    }, 0);
  return compute(
    "cost.batch",
    {
      uses,
      waste_share: each > 0 && weighed_kg > 0 ? Math.min(1, Math.max(0, 1 - good_kg / weighed_kg)) : null,
      hands_s: handsOf(events),
      rate_minor_per_h: shop.value?.rate_minor_per_h ?? null,
      pieces: run.pieces ?? 0,
      boxes: boxes.map((box) => ({ name: box.id, pieces: box.lines[0]!.count, packaging_minor: Math.round(packaging(box)) })),
    },
    "desk",
  );
}

/** The margin of a price, and the price for a wanted margin (percent of the net price). */
export function priceOf(cost_minor: number, price_minor: number | null, margin_percent: number | null): Promise<CostPriceReply> {
  return compute("cost.price", { cost_minor: Math.max(0, cost_minor), price_minor, margin_percent }, "desk");
}
