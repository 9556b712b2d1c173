import type { ChocolateRow, Dip, PocketM, ProductRow, Shop, Targets } from "../../documents";
import { t } from "../../text";
import { withoutEmpty, sameNamed } from "./request";

/** A chocolate as plans need it; without any in the shop, the kinds there are. */
export type Choice = Pick<ChocolateRow, "id" | "name" | "chocolate"> & { targets: ChocolateRow["targets"] | null };

export function chocolatesOf(shop: Shop): Choice[] {
  if (shop.chocolates.length > 0) return shop.chocolates;
  const kinds: ChocolateRow["chocolate"][] = ["dark_chocolate", "milk_chocolate", "white_chocolate"];
  return kinds.map((kind) => ({ id: kind, name: t(`word.${kind}`), chocolate: kind, targets: null }));
}

/** Its own heat lines, where all of them are known; else those of its kind. */
export function targetsOf({ targets }: Choice): Targets | undefined {
  return targets && Object.values(targets).every((line) => line !== null) ? withoutEmpty<Targets>(targets) : undefined;
}

/** What of dipping comes from which field of the product. */
const FROM_COATING = {
  method: "method",
  pickup: "pickup_share",
  bowl_width_m: "bowl_width_m",
  dip_s: "dip_s",
  top_mark: "top_mark",
  salt: "salt",
  salt_each_kg: "salt_each_kg",
} as const;

/** The part of a request to slab.plan that a dipped product asks for; undefined: it stays plain. */
export function dipRequest(product: ProductRow | undefined, shop: Shop): Dip | undefined {
  if (product?.finish !== "dipped") return undefined;
  const { coating, pocket, prebottom } = product;
  const chocolate = shop.chocolates.find((one) => one.id === product.chocolate_id);
  const all_m = coating.thickness_m;
  const { method, pickup_share: pickup, bowl_width_m, dip_s, top_mark, salt, salt_each_kg } = coating;
  const sides = withoutEmpty<PocketM>(pocket);
  return withoutEmpty<Dip>({
    method,
    pickup,
    bowl_width_m,
    dip_s,
    top_mark,
    salt,
    salt_each_kg,
    thickness_m: all_m === null ? null : { bottom: all_m, side: all_m, top: all_m },
    prebottom_m: prebottom ? coating.prebottom_m : null,
    pocket_m: Object.values(pocket).every((side) => side !== null) ? sides : null,
    chocolate: chocolate?.chocolate,
    set_s: chocolate?.set_s,
  });
}

/** Which field of the shop each of them comes from. */
export function dipOrigins(product: ProductRow | undefined): Record<string, string> {
  if (product?.finish !== "dipped") return {};
  const row = `products/${product.id}`;
  const values = Object.entries(FROM_COATING).map(([here, there]) => [`dip.${here}`, `${row}.coating.${there}`]);
  return {
    ...Object.fromEntries(values),
    ...Object.fromEntries(["side", "bottom", "top"].map((side) => [`dip.thickness_m.${side}`, `${row}.coating.thickness_m`])),
    ...sameNamed(`${row}.coating`, ["prebottom_m"], "dip."),
    ...sameNamed(`${row}.pocket`, ["length_m", "width_m", "height_m"], "dip.pocket_m."),
    ...sameNamed(`chocolates/${product.chocolate_id}`, ["chocolate", "set_s"], "dip."),
  };
}
