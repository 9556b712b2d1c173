/** What a batch and its boxes cost, from what went in, the prices of deliveries and the time of hands. */
import type { CostBatchReply, CostBatchRequest, CostBoxReply, CostBoxRequest, CostMonthsReply, CostMonthsRequest, CostPriceReply, Lot, Run, Shop, Summary } from "../documents";
import { compute } from "../engine/client";
import type { Store } from "../storage";
import { batchStream } from "../streams";
import { partsOf } from "./batchParts";
import { handsOf, pricedLot, pricedUse, pricedUses } from "./costParts";
import { boughtMaterials, dayOf, lots } from "./trade";
import type { BatchRecord } from "./types";

/** The cost of a counted batch, with the boxes of its product. */
export function costOf(known: Shop, record: BatchRecord): Promise<CostBatchReply> {
  return compute("cost.batch", costRequest(known, record), "desk");
}

/** What one batch tells of its month; null: it made no pieces that were planned and counted. */
export type MonthBatch = NonNullable<CostMonthsRequest["batches"]>[number];

/** Closed batches as this phone has told them before, by id. Older ones are asked of the server, so many at a time. */
const TOLD = "months";
const AT_ONCE = 40;

/** Yield, cost and time of closed batches, month by month: as many as are known by now, and how many still are to be looked at. */
export async function byMonth(store: Store, known: Shop, closed: Summary[], record: (batchId: string) => Promise<BatchRecord | null>): Promise<CostMonthsReply & { waiting: number }> {
  const told = new Map(Object.entries((await store.meta.get<Record<string, MonthBatch | null>>(TOLD)) ?? {}));
  const held = new Set((await store.batches.all()).map(({ batch_id }) => batch_id));
  // A price may have come since.
  const missing = closed.filter(({ batch_id }) => !told.has(batch_id) || (held.has(batch_id) && told.get(batch_id)?.cost_minor === null));
  for (const { batch_id } of missing.slice(0, AT_ONCE)) {
    const found = await record(batch_id);
    if (found) told.set(batch_id, await monthBatch(known, found));
  }
  await store.meta.put(TOLD, Object.fromEntries(told));
  const batches = closed.flatMap(({ batch_id }) => told.get(batch_id) ?? []);
  return { ...(await compute("cost.months", { batches }, "desk")), waiting: closed.filter(({ batch_id }) => !told.has(batch_id)).length };
}

async function monthBatch(known: Shop, record: BatchRecord): Promise<MonthBatch | null> {
  const { run, events } = record;
  const planned = run.planned.pieces;
  if (run.pieces == null || !planned || run.closed_at_ms === null) return null;
  const cost = await costOf(known, record);
  return { month: dayOf(run.closed_at_ms).slice(0, 7), planned, good: run.pieces, cost_minor: cost.not_priced.length > 0 ? null : cost.total_minor, hands_s: handsOf(events) };
}

/** What is in a box, and what it is packed in. */
type Box = Pick<Shop["boxes"][number], "lines" | "packaging">;

/** The cost of a box of one or several products, a piece of each by its batch that was counted last on this phone. */
export async function boxCost(store: Store, known: Shop, { lines, packaging }: Box): Promise<CostBoxReply> {
  const counted = await lastCounted(store);
  const reckoned = lines.map(async ({ product_id, count }) => {
    const name = known.products.find((one) => one.id === product_id)?.name || product_id;
    const row = counted.get(product_id);
    const events = row ? await store.events.eventsOf(batchStream(row.batch_id)) : [];
    return { name, count, batch: row ? reckonedFrom(known, { summary: row, plan: row.plan, run: row.run!, events }).batch : null };
  });
  return compute("cost.box", { lines: await Promise.all(reckoned), packaging: packagingOf(known, packaging) }, "desk");
}

/** By product the batch that was counted last and not thrown away. */
async function lastCounted(store: Store) {
  const rows = (await store.batches.all()).filter(({ run }) => run?.pieces && !run.thrown_away);
  const byTime = rows.sort((a, b) => (a.run?.touched_ms ?? 0) - (b.run?.touched_ms ?? 0));
  return new Map(byTime.map((row) => [(row.plan as { product_id?: string | null }).product_id ?? "", row]));
}

/** What it is reckoned from. Chocolate, what lies under and salt count as planned, but for what was taken of lots; caramel that was
 * weighed back is paid for by the batch it goes into. */
function reckonedFrom(known: Shop, { summary, plan, run, events }: Reckoned) {
  const { currency } = known;
  const all = lots.value;
  const parts = partsOf(known, plan, run) ?? [];
  const caramel = parts.find(({ list }) => list === "caramels");
  const weighed_kg = run.weighed_kg ?? run.planned.caramel_kg ?? 0;
  const back_kg = weighedBack(summary.batch_id, run, caramel?.row && `caramels/${caramel.row.id}`, all);
  const typed = { caramels: run.lot, chocolates: run.dip?.bowls?.[0]?.lot ?? null, materials: null };
  const uses = parts.flatMap(({ list, row, name, each_kg, lost_kg }) => {
    const amount = list === "caramels" ? weighed_kg : each_kg * (run.planned.pieces ?? 0) + lost_kg;
    const priced = pricedUses(name, amount, row ? `${list}/${row.id}` : null, all, run.uses ?? [], typed[list], currency);
    return list === "caramels" ? without(priced, back_kg) : priced;
  });
  const good_kg = (run.pieces ?? 0) * (caramel?.each_kg ?? 0);
  const went_kg = weighed_kg - back_kg;
  const waste_share = good_kg > 0 && went_kg > 0 ? Math.max(0, 1 - good_kg / went_kg) : null;
  return { batch: { uses, hands_s: handsOf(events), rate_minor_per_h: known.rate_minor_per_h, pieces: run.pieces ?? 0 }, waste_share };
}

type Reckoned = Pick<BatchRecord, "plan" | "run" | "events"> & { summary: { batch_id: string } };

/** The same with the boxes of its product alone. */
export function costRequest(known: Shop, record: BatchRecord): CostBatchRequest {
  const { batch, waste_share } = reckonedFrom(known, record);
  const boxes = known.boxes.filter((box) => box.lines.length === 1 && box.lines[0]!.product_id === record.plan.product_id);
  return { ...batch, waste_share, boxes: boxes.map((box) => ({ name: box.id, pieces: box.lines[0]!.count, packaging: packagingOf(known, box.packaging) })) };
}

/** What a box is packed in, each by its last delivery. */
function packagingOf({ currency }: Shop, packaging: Box["packaging"]): CostBoxRequest["packaging"] {
  const bought = new Map(boughtMaterials().map((one) => [one.material, one]));
  return packaging.map(({ material, amount }) => {
    const row = bought.get(material);
    return pricedUse(row?.name || material, amount, pricedLot(lots.value.values(), material, null, currency, row?.unit));
  });
}

/** Caramel that was left over and waits for another batch (kg). */
function weighedBack(batch_id: string, run: Run, material: string | undefined, all: ReadonlyMap<string, Lot>): number {
  const kept = [...all.values()].filter((lot) => lot.made_from === batch_id && lot.material === material);
  return kept.reduce((sum, lot) => sum + lot.amount, 0) || (run.out.filter(({ what }) => what === "rest").at(-1)?.kg ?? 0);
}

/** The same without so much, taken of each in its share. */
function without(uses: CostBatchRequest["uses"], kg: number): CostBatchRequest["uses"] {
  const all_kg = uses.reduce((sum, { amount }) => sum + amount, 0);
  const share = all_kg > 0 ? Math.max(0, 1 - kg / all_kg) : 1;
  return uses.map((use) => ({ ...use, amount: use.amount * share }));
}

/** The margin of a price, and the price for a wanted margin (percent of the net price). */
export function priceOf(cost_minor: number, price_minor: number | null, margin_percent: number | null): Promise<CostPriceReply> {
  return compute("cost.price", { cost_minor: Math.max(0, cost_minor), price_minor, margin_percent }, "desk");
}
