/** What the request of every plan that melts takes from the shop: oven, bowl, caramel, and what they rest on. */
import type { BasisByField, CaramelRow, Old, Oven, ProductRow, Shop, SlabPlanRequest, Vessel } from "../../documents";
import { withoutEmpty, sameNamed } from "./request";

/** A form with what the person has changed, and which fields were typed in. */
export function changed<F extends { typed: string[] }>(form: F, change: Partial<Omit<F, "typed">>): F {
  return { ...form, ...change, typed: [...new Set([...form.typed, ...Object.keys(change)])] };
}

/** The caramel a product is made of; the shop's first where it names none. */
export function caramelOf(product: ProductRow | undefined, shop: Shop): CaramelRow | undefined {
  return shop.caramels.find((one) => one.id === product?.caramel_id) ?? shop.caramels[0];
}

/** The oven, and the bowl that goes into it. */
export function ovenRequest(form: { oven_id: string; vessel_id: string }, shop: Shop): Pick<SlabPlanRequest, "oven" | "step_s" | "vessel"> {
  const oven = shop.ovens.find((one) => one.id === form.oven_id);
  const vessel = shop.vessels.find((one) => one.id === form.vessel_id);
  return {
    oven: withoutEmpty<Oven>({
      rated_w: oven?.rated_w,
      measured_in: shop.basis[`ovens/${form.oven_id}.rated_w`] === "measured" ? "water" : null,
      turntable: oven?.turntable,
      unevenness: oven?.unevenness,
      levels_percent: oven?.levels_percent,
    }),
    step_s: oven?.step_s,
    // One that nobody weighed is planned like none: its weight is not known.
    vessel: vessel?.mass_kg == null ? undefined : withoutEmpty<Vessel>({ mass_kg: vessel.mass_kg, heat_capacity_j_kgk: vessel.heat_capacity_j_kgk }),
  };
}

/** Old caramel as a form has it: its weight or its share, and how often it was melted again already. */
export interface OldCaramel {
  old_kg: number | null;
  old_share: number | null;
  old_remelts: number | null;
}

export const NO_OLD_CARAMEL: OldCaramel = { old_kg: null, old_share: null, old_remelts: 0 };

/** What the bowl holds, the old caramel in it, and how often the caramel's label allows that. */
export function bowlRequest(form: OldCaramel & { vessel_id: string }, shop: Shop, caramel: CaramelRow | undefined): Pick<SlabPlanRequest, "vessel_volume_m3" | "old" | "remelts_allowed"> {
  return {
    vessel_volume_m3: shop.vessels.find((one) => one.id === form.vessel_id)?.volume_m3,
    old: form.old_kg || form.old_share ? withoutEmpty<Old>({ kg: form.old_kg, share: form.old_share, remelts: form.old_remelts }) : null,
    remelts_allowed: caramel?.remelts_allowed,
  };
}

/** The lines of a caramel above its window. */
export const HEAT_LINES = ["limit_c", "warn_c", "stop_c"];

/** What every plan that melts takes from the shop: its air, oven, bowl and caramel. */
export function sharedOrigins(form: { oven_id: string; vessel_id: string }, caramel: CaramelRow | undefined): Record<string, string> {
  return {
    ...sameNamed("shop", ["room_c", "humidity", "fridge_c"]),
    ...sameNamed(`ovens/${form.oven_id}`, ["rated_w", "turntable", "unevenness"], "oven."),
    ...sameNamed(`ovens/${form.oven_id}`, ["step_s"]),
    ...sameNamed(`vessels/${form.vessel_id}`, ["mass_kg", "heat_capacity_j_kgk"], "vessel."),
    vessel_volume_m3: `vessels/${form.vessel_id}.volume_m3`,
    ...sameNamed(`caramels/${caramel?.id}`, ["block_kg", "firmness", "squeeze", "remelts_allowed"]),
  };
}

/** A built-in material is the engine's own, published one; a composition comes from the shop's label or scales. */
export function caramelBasis(caramel: CaramelRow | undefined, shop: Shop): BasisByField {
  if (!caramel) return {};
  return { material: typeof caramel.material === "string" ? "published" : labelBasis(caramel.id, shop) };
}

/** What a caramel's make-up rests on: on its label, where that was filled in, else on its weighed density. */
function labelBasis(id: string, shop: Shop): BasisByField[string] {
  const label = Object.keys(shop.basis).find((path) => path.startsWith(`caramels/${id}.label.`));
  return shop.basis[label ?? `caramels/${id}.density_kg_m3`] ?? "typed";
}
