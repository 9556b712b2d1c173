import type { NeedsGatherReply, NeedsGatherRequest, NeedsPlanReply, OrdersOverviewReply, StockOverviewReply } from "../../documents";
import { batches, now, orders, ordersOverview, packs, plan, shop, stockOverview } from "../../state";

export interface Found {
  needs: NeedsPlanReply;
  unsized: string[];
  /** What a piece of a product that is made takes and no row of the shop names. */
  unlisted: NeedsGatherReply["unlisted"];
  stock: StockOverviewReply;
}

/** What open orders want that is neither made nor planned, and of what there is too little for it; null: a later call has overtaken this one. */
export async function needs(): Promise<Found | null> {
  const [overview, stock] = await Promise.all([ordersOverview(), stockOverview()]);
  const known = [...batches.value.values()].filter((one) => one.run !== null);
  const request = {
    shop: shop.value ?? {},
    orders: overview.orders.map(missingOf),
    lots: stock.lots.filter((one) => !one.differences.includes("other_unit")).map(({ lot_id, material, left, is_past }) => ({ lot_id, material, left, is_past })),
    batches: known.map(({ batchId, plan: document, run }) => ({ id: batchId, plan: document, run: run! })),
    packs: [...packs.value.values()],
    now_ms: now.value,
  } as NeedsGatherRequest;
  const gathered = await plan("needs.gather", request);
  if (!gathered) return null;
  const { unsized = [], unlisted = [], ...asked } = gathered.reply;
  const answer = await plan("needs.plan", asked);
  if (!answer) return null;
  const wanted = new Set(answer.reply.unknown.map((one) => one.id));
  const made = new Set(answer.reply.products.map((one) => one.product_id));
  return { needs: answer.reply, stock, unlisted: unlisted.filter((one) => made.has(one.product_id)), unsized: unsized.filter((id) => wanted.has(id)) };
}

/** An open order as it is asked about: boxes and pieces, or by weight. */
function missingOf({ order_id, lines }: OrdersOverviewReply["orders"][number]) {
  const order = orders.value.get(order_id);
  return {
    order_id,
    wanted_ms: order?.counter ? null : (order?.wanted_ms ?? null),
    lines: lines.map(({ box_id, product_id, missing, mass_kg }) => (mass_kg === null ? { box_id, product_id, missing } : { box_id, product_id, missing: 0, mass_kg: missing })),
  };
}
