/** What the request of every plan poured between bars takes from its form and from the shop, and what that rests on. */
import type { Bar, BasisByField, Shop, SlabPlanRequest } from "../../documents";
import { bowlRequest, caramelBasis, caramelOf, HEAT_LINES, type OldCaramel, sharedOrigins } from "./meltRequest";
import { withoutEmpty, sameNamed } from "./request";

export interface PouredForm extends OldCaramel {
  product_id: string;
  oven_id: string;
  vessel_id: string;
  base_id: string;
  slab_height_m: number | null;
  piece_length_m: number | null;
  room_c: number | null;
  humidity: number | null;
  start_c: number | null;
  /** Fields the person has typed in themselves. */
  typed: string[];
}

type Poured = Omit<SlabPlanRequest, "have" | "want" | "frame" | "piece_width_m" | "oven" | "vessel" | "jacket" | "dip" | "basis" | "batches">;

/** The product, the caramel it is made of, and the table. */
function chosenRows(form: PouredForm, shop: Shop) {
  const product = shop.products.find((one) => one.id === form.product_id);
  return { product, caramel: caramelOf(product, shop), table: shop.tables[0] };
}

/** Fields left empty are left out, so that the engine names what is missing. */
export function pouredRequest(form: PouredForm, shop: Shop): Poured {
  const { product, caramel, table } = chosenRows(form, shop);
  const base = shop.bases.find((one) => one.id === form.base_id);
  const window = caramel?.windows["slab"];
  return withoutEmpty<Poured>({
    slab_height_m: form.slab_height_m,
    piece_length_m: form.piece_length_m,
    trim_m: product?.trim_m,
    kerf_m: product?.kerf_m,
    max_length_m: table?.max_length_m,
    max_width_m: table?.max_width_m,
    bars: ownedBars(shop),
    ...bowlRequest(form, shop, caramel),
    base: base?.base,
    contact_m2k_w: base?.contact_m2k_w,
    bottom: base?.bottom,
    base_length_m: base?.length_m,
    base_width_m: base?.width_m,
    base_thickness_m: base?.thickness_m,
    target_c: caramel?.target_c,
    fridge_c: shop.fridge_c,
    room_c: form.room_c,
    humidity: form.humidity,
    start_c: form.start_c,
    windows: caramel && window && { ...window, limit_c: caramel.limit_c, warn_c: caramel.warn_c, stop_c: caramel.stop_c },
    material: caramel?.material,
    block_kg: caramel?.block_kg,
    firmness: caramel?.firmness,
    stiffer_k: caramel?.stiffer_k,
    squeeze: caramel?.squeeze,
  });
}

/** The bars as the shop has them; those of no height are still being typed in. */
function ownedBars(shop: Shop): Bar[] | null {
  const bars = shop.bars.flatMap(({ height_m, length_m, count }) => (height_m ? [withoutEmpty<Bar>({ height_m, length_m, count })] : []));
  return bars.length ? bars : null;
}

/** Which row and field of the shop each of these comes from. */
export function pouredOrigins(form: PouredForm, shop: Shop): Record<string, string> {
  const { product, caramel, table } = chosenRows(form, shop);
  return {
    ...sharedOrigins(form, caramel),
    ...sameNamed(`bases/${form.base_id}`, ["base", "bottom", "contact_m2k_w"]),
    base_length_m: `bases/${form.base_id}.length_m`,
    base_width_m: `bases/${form.base_id}.width_m`,
    base_thickness_m: `bases/${form.base_id}.thickness_m`,
    ...Object.assign({}, ...shop.bars.filter((one) => one.height_m).map((one, index) => sameNamed(`bars/${one.id}`, ["height_m", "length_m", "count"], `bars[${index}].`))),
    ...sameNamed(`tables/${table?.id}`, ["max_length_m", "max_width_m"]),
    ...sameNamed(`caramels/${caramel?.id}.windows.slab`, ["low_c", "high_c"], "windows."),
    ...sameNamed(`caramels/${caramel?.id}`, ["target_c", "stiffer_k"]),
    ...sameNamed(`caramels/${caramel?.id}`, HEAT_LINES, "windows."),
    ...sameNamed(`products/${product?.id}`, ["piece_length_m", "slab_height_m", "trim_m", "kerf_m"]),
  };
}

/** The basis of what came from the shop and was not typed over. */
export function pouredBasis(form: PouredForm, shop: Shop, origins: Record<string, string>): BasisByField {
  const found: BasisByField = {};
  for (const [here, there] of Object.entries(origins)) {
    const basis = shop.basis[there];
    if (basis && !form.typed.includes(here.replace("jacket.", ""))) found[here] = basis;
  }
  // Nobody has read the block: it is taken to be as warm as the room.
  if (!form.typed.includes("start_c")) found["start_c"] = "assumed";
  return { ...found, ...caramelBasis(chosenRows(form, shop).caramel, shop) };
}
