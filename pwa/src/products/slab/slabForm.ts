import type { FrameByLength, Have, Jacket, Shop, SlabPlanRequest, Want } from "../../documents";
import type { PlanParts } from "../../state";
import { dipOrigins, dipRequest } from "../shared/dip";
import { caramelOf, NO_OLD_CARAMEL, type OldCaramel, ovenRequest } from "../shared/meltRequest";
import { pouredBasis, pouredOrigins, pouredRequest } from "../shared/pouredRequest";
import { withoutEmpty, sameNamed } from "../shared/request";

/** What the person has said, in SI; null: nothing typed. */
export interface SlabForm extends OldCaramel {
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
    ...NO_OLD_CARAMEL,
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

/** The oven, the base and the caramel it uses, of which the shop may have measured something. */
export function ovenAndBaseOf(form: SlabForm, shop: Shop): PlanParts {
  const caramel = caramelOf(shop.products.find((one) => one.id === form.product_id), shop);
  return { oven_id: jacketedVessel(form, shop) ? null : form.oven_id || null, base_id: form.base_id || null, product_id: form.product_id || null, caramel_id: caramel?.id ?? null };
}

/** The request to slab.plan. Fields left empty are left out, so that the engine names what is missing. */
export function requestOf(form: SlabForm, shop: Shop): SlabPlanRequest {
  const product = shop.products.find((one) => one.id === form.product_id);
  return withoutEmpty<SlabPlanRequest>({
    ...amountOf(form),
    ...pouredRequest(form, shop),
    piece_width_m: form.piece_width_m,
    frame: form.frame === "fit" ? "fit" : withoutEmpty<FrameByLength>({ length_m: form.frame_length_m, width_m: form.frame_width_m }),
    ...(jacketedVessel(form, shop) ? { jacket: jacketRequest(form) } : ovenRequest(form, shop)),
    dip: dipRequest(product, shop),
    basis: pouredBasis(form, shop, origins(form, shop)),
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

/** Which row and field of the shop a field of the request comes from. */
function origins(form: SlabForm, shop: Shop): Record<string, string> {
  const product = shop.products.find((one) => one.id === form.product_id);
  return {
    ...pouredOrigins(form, shop),
    ...sameNamed(`vessels/${form.vessel_id}`, ["water_c"], "jacket."),
    ...dipOrigins(product),
    ...sameNamed(`products/${product?.id}`, ["piece_width_m"]),
  };
}
