import type { BasisByField, FrameByLength, Have, Jacket, Shop, SlabPlanRequest, Want } from "../../documents";
import type { PlanParts } from "../../state";
import { dipOrigins, dipRequest } from "../shared/dip";
import { caramelBasis, caramelOf, HEAT_LINES, ovenRequest, sharedOrigins } from "../shared/meltRequest";
import { withoutEmpty, sameNamed } from "../shared/request";

/** What the person has said, in SI; null: nothing typed. */
export interface SlabForm {
  product_id: string;
  by: "kg" | "pieces" | "boxes";
  kg: number | null;
  pieces: number | null;
  boxes: number | null;
  per_box: number | null;
  slab_height_m: number | null;
  piece_length_m: number | null;
  piece_width_m: number | null;
  frame: "fit" | "given";
  frame_length_m: number | null;
  frame_width_m: number | null;
  oven_id: string;
  vessel_id: string;
  /** In a water-jacketed vessel: its water, the block whole or chopped, and how thick or how small. */
  water_c: number | null;
  block: "whole" | "chopped";
  thickness_m: number | null;
  chopped_m: number | null;
  base_id: string;
  /** Lot of the caramel; empty: asked for at the bench. */
  lot: string;
  room_c: number | null;
  humidity: number | null;
  start_c: number | null;
  /** Fields the person has typed in themselves. */
  typed: string[];
}

/** What of a form can be changed in one go. */
export type Change = Partial<Omit<SlabForm, "typed">>;

const START_KG = 1.8;
const START_CHOPPED_M = 0.03;

export function firstForm(shop: Shop): SlabForm {
  const blank: SlabForm = {
    product_id: "",
    by: "kg",
    kg: START_KG,
    pieces: null,
    boxes: null,
    per_box: null,
    slab_height_m: null,
    piece_length_m: null,
    piece_width_m: null,
    frame: "fit",
    frame_length_m: null,
    frame_width_m: null,
    oven_id: shop.ovens[0]?.id ?? "",
    vessel_id: shop.vessels[0]?.id ?? "",
    water_c: shop.vessels[0]?.water_c ?? null,
    block: "whole",
    thickness_m: null,
    chopped_m: START_CHOPPED_M,
    base_id: shop.bases[0]?.id ?? "",
    lot: "",
    room_c: shop.room_c,
    humidity: shop.humidity ?? null,
    start_c: shop.room_c,
    typed: [],
  };
  return withProduct(blank, shop, shop.products.find((one) => one.kind === "slab")?.id ?? "");
}

/** The form with the sizes of a product; what was typed about sizes gives way to it. */
export function withProduct(form: SlabForm, shop: Shop, product_id: string): SlabForm {
  const product = shop.products.find((one) => one.id === product_id);
  if (!product) return { ...form, product_id };
  const { piece_length_m, piece_width_m, slab_height_m, per_box } = product;
  const sizes = ["piece_length_m", "piece_width_m", "slab_height_m", "per_box"];
  const typed = form.typed.filter((name) => !sizes.includes(name));
  return { ...form, product_id, piece_length_m, piece_width_m, slab_height_m, per_box, typed };
}

/** The form with a vessel; a water jacket brings its own temperature. */
export function withVessel(form: SlabForm, shop: Shop, vessel_id: string): SlabForm {
  const water_c = shop.vessels.find((one) => one.id === vessel_id)?.water_c ?? null;
  return { ...form, vessel_id, water_c, typed: form.typed.filter((name) => name !== "water_c") };
}

/** The water-jacketed vessel that is chosen; undefined: the block goes into an oven. */
export function jacketedVessel(form: SlabForm, shop: Shop) {
  return shop.vessels.find((one) => one.id === form.vessel_id && one.jacketed);
}

/** Another way to say how much: what is still empty there starts from what the present plan gives. */
export function measuredBy(form: SlabForm, by: SlabForm["by"], planned: number | null): SlabForm {
  const boxes = planned !== null && form.per_box ? Math.max(1, Math.floor(planned / form.per_box)) : null;
  return { ...form, by, pieces: form.pieces ?? planned, boxes: form.boxes ?? boxes };
}

/** The product, the caramel it is made of, and the table. */
function chosenRows(form: SlabForm, shop: Shop) {
  const product = shop.products.find((one) => one.id === form.product_id);
  return { product, caramel: caramelOf(product, shop), table: shop.tables[0] };
}

/** The oven and the base it uses, of which the shop may have measured something. */
export function ovenAndBaseOf(form: SlabForm, shop: Shop): PlanParts {
  return { oven_id: jacketedVessel(form, shop) ? null : form.oven_id || null, base_id: form.base_id || null };
}

/** The request to slab.plan. Fields left empty are left out, so that the engine names what is missing. */
export function requestOf(form: SlabForm, shop: Shop): SlabPlanRequest {
  const { product, caramel, table } = chosenRows(form, shop);
  const base = shop.bases.find((one) => one.id === form.base_id);
  const window = caramel?.windows["slab"];
  return withoutEmpty<SlabPlanRequest>({
    ...amountOf(form),
    slab_height_m: form.slab_height_m,
    piece_length_m: form.piece_length_m,
    piece_width_m: form.piece_width_m,
    trim_m: product?.trim_m,
    kerf_m: product?.kerf_m,
    frame: form.frame === "fit" ? "fit" : withoutEmpty<FrameByLength>({ length_m: form.frame_length_m, width_m: form.frame_width_m }),
    max_length_m: table?.max_length_m,
    max_width_m: table?.max_width_m,
    bars_m: barSets(shop),
    ...(jacketedVessel(form, shop) ? { jacket: jacketRequest(form) } : ovenRequest(form, shop)),
    base: base?.base,
    contact_m2k_w: base?.contact_m2k_w,
    bottom: base?.bottom,
    room_c: form.room_c,
    humidity: form.humidity,
    start_c: form.start_c,
    windows: caramel && window && { ...window, limit_c: caramel.limit_c, warn_c: caramel.warn_c, stop_c: caramel.stop_c },
    material: caramel?.material,
    block_kg: caramel?.block_kg,
    firmness: caramel?.firmness,
    squeeze: caramel?.squeeze,
    dip: dipRequest(product, shop),
    basis: basisOf(form, shop),
  });
}

function jacketRequest(form: SlabForm): Jacket {
  const { water_c, block, thickness_m, chopped_m } = form;
  // Left out, a size would mean a whole block: pieces of no size are refused where one can mend it.
  return withoutEmpty<Jacket>({ water_c, ...(block === "whole" ? { thickness_m } : { chopped_m: chopped_m ?? 0 }) });
}

function amountOf(form: SlabForm): Pick<SlabPlanRequest, "have" | "want"> {
  if (form.by === "kg") return { have: withoutEmpty<Have>({ kg: form.kg }) };
  if (form.by === "pieces") return { want: withoutEmpty<Want>({ pieces: form.pieces }) };
  return { want: withoutEmpty<Want>({ boxes: form.boxes, per_box: form.per_box }) };
}

/** Four bars of a height close a frame; each such set may be stacked. */
function barSets(shop: Shop): number[] | null {
  const sets = shop.bars.flatMap(({ height_m, count }) => (height_m ? Array.from({ length: Math.floor(count / 4) }, () => height_m) : []));
  return sets.length ? sets : null;
}

/** Which row and field of the shop a field of the request comes from. */
function origins(form: SlabForm, shop: Shop): Record<string, string> {
  const { product, caramel, table } = chosenRows(form, shop);
  return {
    ...sharedOrigins(form, caramel),
    ...sameNamed(`vessels/${form.vessel_id}`, ["water_c"], "jacket."),
    ...sameNamed(`bases/${form.base_id}`, ["base", "bottom", "contact_m2k_w"]),
    bars_m: `bars/${shop.bars[0]?.id}.height_m`,
    ...sameNamed(`tables/${table?.id}`, ["max_length_m", "max_width_m"]),
    ...sameNamed(`caramels/${caramel?.id}.windows.slab`, ["low_c", "high_c"], "windows."),
    ...sameNamed(`caramels/${caramel?.id}`, HEAT_LINES, "windows."),
    ...dipOrigins(product),
    ...sameNamed(`products/${product?.id}`, ["piece_length_m", "piece_width_m", "slab_height_m", "trim_m", "kerf_m"]),
  };
}

/** The basis of what came from the shop and was not typed over. */
function basisOf(form: SlabForm, shop: Shop): BasisByField {
  const found: BasisByField = {};
  for (const [here, there] of Object.entries(origins(form, shop))) {
    const basis = shop.basis[there];
    if (basis && !form.typed.includes(here.replace("jacket.", ""))) found[here] = basis;
  }
  // Nobody has read the block: it is taken to be as warm as the room.
  if (!form.typed.includes("start_c")) found["start_c"] = "assumed";
  return { ...found, ...caramelBasis(chosenRows(form, shop).caramel, shop) };
}
