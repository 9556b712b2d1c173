/** What the pieces of a batch are made of: caramel, what lies under, chocolate, salt, each with its row of the shop. */
import type { PlanDocument, ProductRow, Run, Shop } from "../documents";
import { traitsOf } from "../products/traitRegistry";
import { t } from "../text";

/** A row that is bought with a label of its own. */
export interface Bought {
  id: string;
  name?: string | null;
  ingredients?: string | null;
  contains?: string[] | null;
}

export type BoughtList = "caramels" | "chocolates" | "materials";

export interface BatchPart {
  list: BoughtList;
  /** undefined: the shop has no such row (any more). */
  row: Bought | undefined;
  name: string;
  /** In a finished piece, as planned. */
  each_kg: number;
  /** Of all pieces what drips off. */
  lost_kg: number;
}

/** What of a plan's dipping is asked for here. */
interface Dipped {
  per_piece_kg: number;
  prebottom_kg: number;
  drip_kg?: number;
  salt: boolean;
  salt_kg: number | null;
}

/** Of bars weighed in water, 1230 to 1333 kg/m³. */
const CHOCOLATE_KG_M3 = 1280;

/** The parts of a piece, as its plan has them; null: nobody makes pieces of such a batch. */
export function partsOf(shop: Shop, plan: PlanDocument, run: Run): BatchPart[] | null {
  const made = traitsOf(plan.kind).piece?.(plan as never);
  if (!made) return null;
  const { product_id = null, caramel_id = null } = plan as { product_id?: string | null; caramel_id?: string | null };
  const product = shop.products.find((one) => one.id === product_id);
  const dip = (plan.reply as { dip?: Dipped | null }).dip ?? null;
  const planned = run.planned.pieces || 1;
  const coated_kg = dip ? dip.per_piece_kg + dip.prebottom_kg / planned : bottomKg(plan, product);
  const one = (list: BoughtList, row: Bought | undefined, name: string, each_kg: number, lost_kg = 0): BatchPart => ({ list, row, name: row?.name || name, each_kg, lost_kg });
  return [
    one("caramels", shop.caramels.find(({ id }) => id === (caramel_id ?? product?.caramel_id)), t("labels.caramel"), made.caramel_kg),
    ...made.under.map(({ material, kg }) => one("materials", underRow(shop, material), material ? t(`word.${material}`) : t("labels.under"), kg)),
    ...(coated_kg > 0 ? [one("chocolates", shop.chocolates.find(({ id }) => id === product?.chocolate_id), t("labels.chocolate"), coated_kg, dip?.drip_kg ?? 0)] : []),
    ...(dip?.salt ? [one("materials", saltRow(shop, product), t("labels.salt"), (dip.salt_kg ?? 0) / planned)] : []),
  ];
}

/** The thin coat under a piece that is not dipped (kg). */
function bottomKg(plan: PlanDocument, product: ProductRow | undefined): number {
  if (!(plan as { prebottom?: boolean }).prebottom || !product) return 0;
  return (product.piece_length_m ?? 0) * (product.piece_width_m ?? 0) * product.coating.prebottom_m * CHOCOLATE_KG_M3;
}

/** The row of what lies under, by the name of its kind. */
function underRow(shop: Shop, material: string | null): Bought | undefined {
  if (material === null) return undefined;
  const name = t(`word.${material}`).toLowerCase();
  return shop.materials.find((one) => one.what === "under" && [name, material].some((word) => one.id === word || (one.name ?? "").toLowerCase().includes(word)));
}

function saltRow(shop: Shop, product: ProductRow | undefined): Bought | undefined {
  const salts = shop.materials.filter((one) => one.what === "salt");
  return salts.find((one) => one.name === product?.coating.salt) ?? salts[0];
}
