/** Boxes of counted batches: what these fill, their lot code, best by and net contents. */
import type { LotCheckReply, NetCheckReply, Pack, PackBoxesReply, PlanDocument, Run, Values } from "../documents";
import { compute } from "../engine/client";
import type { Store } from "../storage";
import { partsOf } from "./batchParts";
import { shop } from "./shop";
import { correctedNow } from "./time";
import { asked, boughtMaterials, lots, packs, stockOverview } from "./trade";
import type { BatchRecord } from "./types";

/** A batch whose good pieces were counted. */
export interface Counted {
  batch_id: string;
  product_id: string | null;
  good: number;
}

/** What is wanted of the boxes that a batch fills; nulls: nothing yet. */
export interface Wanted {
  box_id: string | null;
  count: number | null;
  seconds: boolean;
}

/** The same of a batch; null while nobody has counted its pieces, or when it was thrown away. */
export function countedOf(batch_id: string, plan: PlanDocument, run: Run | null): Counted | null {
  return run?.pieces == null || run.thrown_away ? null : { batch_id, product_id: plan.product_id ?? null, good: run.pieces };
}

/** What a batch fills, with batches of other products that this phone holds, newest first, for what is assorted. */
export async function boxesOf(store: Store, first: Counted, { box_id, count, seconds }: Wanted): Promise<PackBoxesReply> {
  const rows = (await store.batches.all()).sort((a, b) => b.opened_at_ms - a.opened_at_ms);
  const counted = rows.flatMap((row) => countedOf(row.batch_id, row.plan, row.run) ?? []);
  const others = counted.filter((one) => one.product_id !== null && one.product_id !== first.product_id && one.batch_id !== first.batch_id);
  const boxes = (shop.value?.boxes ?? []).map(({ id, lines, packaging }) => ({ box_id: id, lines, packaging }));
  const stock = (await stockOverview()).lots.filter((lot) => lot.is_open && lot.material);
  const left = stock.map(({ lot_id, material, left: rest }) => ({ lot_id, material, left: rest }));
  return compute("pack.boxes", { batches: [first, ...others], packs: [...packs.value.values()], boxes, stock: left, box_id, count, seconds }, "desk");
}

/** The next lot code by the shop's pattern, or null where none can be made. */
export async function nextCode(made_on: string): Promise<string | null> {
  const used = [...packs.value.values()].map((pack) => pack.code).filter(Boolean).slice(-1000);
  try {
    return (await compute("label.lot_code", { made_on, pattern: shop.value?.code_pattern ?? "YYDDDL", used }, "desk")).code;
  } catch {
    return null;
  }
}

/** Best by of a box that was made on a day, and the material that ends first; null: the box has no shelf life. What went in is known by
 * the lots that were taken, else by the maker's number that was typed. Throws EngineProblem, where its day was over before. */
export async function bestByOf(made_on: string, box_id: string, { plan, run }: BatchRecord): Promise<{ best_by: string; because: string | null } | null> {
  const known = shop.value;
  const shelf_days = known?.boxes.find((box) => box.id === box_id)?.shelf_days ?? null;
  if (!known || shelf_days === null) return null;
  const typed = [run.lot, ...(run.dip?.bowls ?? []).map((one) => one.lot), ...(run.cluster?.under_lots ?? []).map((one) => one.lot)];
  const named = new Set(typed.flatMap((lot) => (lot ? [lot.trim().toLowerCase()] : [])));
  const made_of = new Set((partsOf(known, plan, run) ?? []).flatMap(({ list, row }) => (row ? [`${list}/${row.id}`] : [])));
  const taken = new Set((run.uses ?? []).map(({ lot_id }) => lot_id));
  const went = [...lots.value.values()].filter((lot) => taken.has(lot.id) || (made_of.has(lot.material) && named.has(lot.supplier_lot.trim().toLowerCase())));
  const names = new Map(boughtMaterials().map(({ material, name }) => [material, name]));
  const parts = went.slice(0, 60).map((lot) => ({ name: names.get(lot.material) ?? "", best_by: lot.best_by }));
  return compute("label.best_by", { made_on, shelf_days: Math.min(shelf_days, 1500), parts }, "desk");
}

/** Refuses what makes no sense of boxes packed; the body to write, and what to mind. Throws EngineProblem. */
export function checkPack(pack: Pack | null, kind: string, body: Values, label_kg: number | null = null): Promise<LotCheckReply> {
  const boxes = (shop.value?.boxes ?? []).map((row) => row.id);
  return compute("pack.check", { ...asked(kind, body), pack, boxes, label_kg }, "desk");
}

/** What the weights of some boxes say, by a rule; division_kg: of the scale. */
export function checkNet(pack: Pack, label_kg: number, rule: "us" | "eu", division_kg: number | null): Promise<NetCheckReply> {
  return compute("net.check", { rule, label_kg, net_kg: pack.net_kg.slice(0, 500), lot_size: Math.max(1, pack.packed), division_kg }, "desk");
}

/** When something was made: now, or when it was closed (ms). */
export function madeAt(run: Run): number {
  return run.closed_at_ms ?? correctedNow();
}
