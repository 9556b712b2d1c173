/** The shop as phone, server and engine exchange it: types only, read through documents.ts. */

export interface Units {
  mass: "kg" | "g" | "lb" | "oz";
  length: "mm" | "cm" | "m" | "in";
  temperature: "°C" | "°F";
  power: "W";
}

interface Oven {
  id: string;
  name: string;
  rated_w: number;
  turntable: boolean;
  step_s: number;
  unevenness: number | null;
}
interface Vessel {
  id: string;
  name: string;
  mass_kg: number;
  made_of: string;
  heat_capacity_j_kgk: number;
  /** Whether it stands in a water jacket, and what that is kept at. */
  jacketed: boolean;
  water_c: number;
}
interface Base {
  id: string;
  name: string;
  base: unknown;
  contact_m2k_w: number;
  bottom: unknown;
}
export interface Caramel {
  id: string;
  name: string;
  material: unknown;
  block_kg: number | null;
  windows: Record<string, { low_c: number; high_c: number }>;
  limit_c: number;
  warn_c: number;
  stop_c: number;
  contains: string[];
  /** What a squeeze at delivery and a stand-up test said; null: neither was made. */
  squeeze: string | null;
  firmness: string | null;
}
export interface Chocolate {
  id: string;
  name: string;
  chocolate: "dark_chocolate" | "milk_chocolate" | "white_chocolate";
  set_s: number;
  /** Its own heat lines; null where its label says nothing. */
  targets: Record<string, number | null>;
  contains: string[];
}
export interface Product {
  id: string;
  name: string;
  kind: string;
  caramel_id: string;
  piece_length_m: number;
  piece_width_m: number;
  slab_height_m: number;
  trim_m: number;
  kerf_m: number;
  per_box: number;
  prebottom: boolean;
  finish: string;
  chocolate_id: string | null;
  coating: {
    method: string;
    thickness_m: number | null;
    pickup_share: number | null;
    prebottom_m: number;
    dip_s: number;
    top_mark: boolean;
    salt: string | null;
    salt_each_kg: number | null;
  };
  pocket: { length_m: number | null; width_m: number | null; height_m: number | null };
  cluster: {
    deposit_kg: number | null;
    second_kg: number;
    spread_m: number | null;
    gap_m: number;
    bed_kg_m2: number | null;
    under: string | null;
    under_each_kg: number | null;
    under_count: number;
    also: string | null;
    also_each_kg: number | null;
    also_count: number;
  };
}

/** A list of the shop. */
export type ShopList =
  | "ovens"
  | "vessels"
  | "caramels"
  | "chocolates"
  | "products"
  | "bases"
  | "bars"
  | "tables"
  | "frames"
  | "trays"
  | "funnels"
  | "thermometers";

/** One field of the shop as the log has it: doc is "shop" or "<list>/<id>"; value null takes it back. */
export interface ShopEdit {
  doc: string;
  field: string;
  value: unknown;
  basis: "typed" | "measured" | "published" | "assumed";
}

/** The fold of all `shop_set` (engine/shop.py), and GET /api/shop. What nobody has set is null or stands as assumed. */
export interface Shop {
  id: string;
  /** What a value rests on, by "<list>/<id>.<field>" or "shop.<field>". */
  basis: Record<string, string>;
  name: string;
  invented: boolean;
  language: string;
  units: Units;
  room_c: number;
  /** Usual relative humidity, 0 to 1; null: nobody measured it. */
  humidity: number | null;
  ovens: Oven[];
  vessels: Vessel[];
  bases: Base[];
  bars: { id: string; height_m: number; count: number; length_m: number }[];
  tables: { id: string; name: string; max_length_m: number; max_width_m: number }[];
  frames: { id: string; name: string; length_m: number; width_m: number }[];
  trays: { id: string; name: string; length_m: number; width_m: number; rim_m: number }[];
  funnels: { id: string; name: string; volume_m3: number; fill: number; deposits_per_min: number }[];
  thermometers: { id: string; name: string; reads_low_k: number; sd_k: number }[];
  caramels: Caramel[];
  chocolates: Chocolate[];
  products: Product[];
}
