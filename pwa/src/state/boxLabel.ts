/** The label of boxes packed together: what went into them, and the papers it is printed on. */
import type { LabelContentReply, LabelContentRequest, Lot, Pack, Shop } from "../documents";
import { compute } from "../engine/client";
import type { Store } from "../storage";
import { t } from "../text";
import { type Bought, type BoughtList, partsOf } from "./batchParts";
import { checkNet } from "./packing";
import { loadRecord } from "./records";
import { lots } from "./trade";
import type { BatchRecord } from "./types";

type Part = NonNullable<LabelContentRequest["parts"]>[number];
type Allergen = NonNullable<Part["contains"]>[number];
export type LabelRule = LabelContentRequest["rule"];
/** What one chooses for a label beside what is packed. */
export interface LabelChoices {
  rule: LabelRule;
  face_m2: number | null;
  words: LabelContentRequest["words"];
  /** Whether ingredients are wanted in the other language of labels in two, as far as they were copied in it. */
  other: boolean;
  e_mark: boolean;
}

/** What the label of a pack says. Throws EngineProblem. */
export async function labelContent(store: Store, known: Shop, pack: Pack, { other, ...choices }: LabelChoices): Promise<LabelContentReply> {
  const shop = other ? inOther(known) : known;
  const records = await Promise.all(pack.from.map(({ batch_id }) => loadRecord(store, batch_id)));
  const parts = [...pack.from.flatMap(({ pieces }, i) => ofBatch(shop, records[i] ?? null, pieces)), ...pack.lots.flatMap((one) => ofLot(shop, lots.value.get(one.lot_id), one.amount))];
  const may_contain = records.flatMap((record) => (record?.run.may_contain ?? []) as Allergen[]);
  const box = shop.boxes.find((one) => one.id === pack.box_id);
  const label_kg = box?.label_kg ?? null;
  const checked = choices.e_mark && label_kg !== null && pack.net_kg.length > 0 ? await checkNet(pack, label_kg, "eu", null) : null;
  return compute(
    "label.content",
    {
      ...choices,
      net_passed: checked?.verdict === "pass",
      name: box?.name || t("labels.box"),
      parts,
      may_contain: [...new Set(may_contain)],
      label_kg,
      code: pack.code,
      made_on: pack.made_on,
      best_by: pack.best_by,
      address: makerOf(shop),
    },
    "desk",
  );
}

/** Who made it, as labels name the maker: the shop's name before its address, where that does not begin with it. */
function makerOf({ name, address }: Shop): string {
  const named = (name ?? "").trim();
  return !address || !named || address.toLocaleLowerCase().startsWith(named.toLocaleLowerCase()) ? address : `${named}, ${address}`;
}

/** The shop with its lists of ingredients in the other language, where somebody copied them in it. */
function inOther(shop: Shop): Shop {
  const other = <R extends { ingredients: string; ingredients_other: string }>(rows: R[]) => rows.map((row) => ({ ...row, ingredients: row.ingredients_other || row.ingredients }));
  return { ...shop, caramels: other(shop.caramels), chocolates: other(shop.chocolates), materials: other(shop.materials) };
}

/** What so many pieces of a batch are made of, each part with its label. */
function ofBatch(shop: Shop, record: BatchRecord | null, pieces: number): Part[] {
  if (!record) return [unknown(t("labels.batch_gone"), 0)];
  const { plan, run } = record;
  const parts = partsOf(shop, plan, run)?.map(({ list, row, name, each_kg }) => part(shop, list, row, name, each_kg * pieces));
  if (!parts) return [unknown(plan.name, 0)];
  const product = shop.products.find((one) => one.id === (plan as { product_id?: string | null }).product_id);
  const said = new Set(parts.flatMap((one) => one.contains ?? []));
  const besides = (product?.contains ?? []).filter((one) => !said.has(one as Allergen)) as Allergen[];
  return besides.length > 0 ? [...parts, { name: product?.name ?? "", ingredients: "", contains: besides, kg: 0 }] : parts;
}

/** What was put into boxes straight from a lot, by the name that lots give it. What they are packed in is no part, nor is a ribbon:
 * of what is for something else the label was copied where it is eaten. What is counted has no weight here and comes last. */
export function ofLot(shop: Shop, lot: Lot | undefined, amount: number): Part[] {
  const [list, id] = (lot?.material ?? "").split("/");
  if (list !== "caramels" && list !== "chocolates" && list !== "materials") return [];
  const row = shop[list].find((one) => one.id === id);
  const what = row && "what" in row ? row.what : null;
  if (!row || what === "packaging" || (what === "other" && !row.ingredients && !(`materials/${row.id}.contains` in shop.basis))) return [];
  return [part(shop, list, row, "", lot?.unit === "each" ? 0 : amount)];
}

function part(shop: Shop, list: BoughtList, row: Bought | undefined, name: string, kg: number): Part {
  if (!row) return unknown(name, kg);
  // A list nobody has filled in says nothing; one that somebody left empty says that there is none.
  const copied = `${list}/${row.id}.contains` in shop.basis;
  return { name: row.name || name, ingredients: row.ingredients ?? "", contains: copied ? ((row.contains ?? []) as Allergen[]) : null, kg };
}

function unknown(name: string, kg: number): Part {
  return { name, ingredients: "", contains: null, kg };
}

const PAPER = "label paper";

/** What this phone's labels were printed on last, as the screen left it; null: nothing yet. */
export async function keptPaper(store: Store): Promise<unknown> {
  return (await store.meta.get(PAPER)) ?? null;
}

export async function keepPaper(store: Store, paper: unknown): Promise<void> {
  await store.meta.put(PAPER, paper);
}
