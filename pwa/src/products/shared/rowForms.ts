import type { CaramelRow, Shop, ShopEdit, ShopList, Values } from "../../documents";
import type { ShopRow } from "../../state";
import { format, languages, t } from "../../text";
import type { Kind } from "../kindTraits";
import { KINDS, traitsOf } from "../traitRegistry";
import { choice, type FormField, NAME, quantities, type RowForm } from "./rowFields";

type Allergen = CaramelRow["contains"][number];
/** As the forms list them: what is met most, nuts by their kind, then the others. All of the engine's, none twice. */
const ALLERGENS = Object.keys({
  milk: 1, soya: 1, peanuts: 1, egg: 1, wheat: 1, sesame: 1,
  almond: 1, brazil_nut: 1, cashew: 1, hazelnut: 1, macadamia: 1, pecan: 1, pine_nut: 1, pistachio: 1, walnut: 1, nuts: 1,
  barley: 1, oats: 1, rye: 1, gluten: 1, sulphites: 1, fish: 1, crustaceans: 1, molluscs: 1, celery: 1, mustard: 1, lupin: 1,
} satisfies Record<Allergen, 1>);

type Weekday = Shop["work_days"][number];
const WEEKDAYS = Object.keys({ monday: 1, tuesday: 1, wednesday: 1, thursday: 1, friday: 1, saturday: 1, sunday: 1 } satisfies Record<Weekday, 1>);

/** The kinds whose products have a form in the shop. */
const MADE = KINDS.filter((kind) => traitsOf(kind).rows);

/** What is bought has these besides. */
const BOUGHT: FormField[] = [
  { kind: "amount", field: "lowest" },
  { kind: "row", of: "suppliers", field: "supplier_id" },
  { kind: "words", field: "ingredients", most: 1000 },
  { kind: "words", field: "ingredients_other", most: 1000 },
  ...quantities("best_by_days"),
];

/** What has words of its own on a screen; the limits of every field are the engine's. */
export const FORMS: Record<ShopList | "shop", RowForm> = {
  shop: {
    fields: [
      { kind: "words", field: "name", most: 80 },
      choice("language", languages, "language"),
      ...quantities("room_c", "humidity", "fridge_c"),
      { kind: "words", field: "currency", most: 3 },
      { kind: "words", field: "address", most: 300 },
    ],
    more: [
      choice("rule", ["us", "eu", "uk"], "shop.rule"),
      { kind: "money", field: "rate_minor_per_h" },
      { kind: "clock", field: "open_s" },
      { kind: "clock", field: "close_s" },
      { kind: "several", field: "work_days", words: "weekday", options: WEEKDAYS },
      { kind: "words", field: "code_pattern", most: 40 },
    ],
  },
  ovens: {
    fields: [
      NAME,
      ...quantities("rated_w"),
      choice("step_s", [1, 5, 10, 15, 30], ""),
      { kind: "numbers", field: "levels_percent", options: [100, 90, 80, 70, 60, 50, 40, 30, 20, 10], words: "shop.level" },
      { kind: "yes_no", field: "turntable" },
    ],
    guide: "water",
  },
  vessels: {
    fields: [NAME, ...quantities("mass_kg", "volume_m3"), choice("made_of", ["glass", "ceramic", "plastic", "silicone", "steel"], "word")],
    more: [{ kind: "yes_no", field: "jacketed" }, ...quantities("water_c")],
  },
  // What is on the delivery first; fourteen temperatures and shares are not asked of whoever only has a block.
  caramels: {
    fields: [NAME, { kind: "several", field: "contains", words: "allergen", options: ALLERGENS }, ...quantities("block_kg")],
    more: [
      ...quantities("windows.slab.low_c", "windows.slab.high_c", "windows.deposit.low_c", "windows.deposit.high_c", "target_c", "warn_c", "stop_c", "limit_c"),
      choice("squeeze", ["firm", "soft", "brittle"], "firmness"),
      choice("firmness", ["firm", "borderline", "slumps"], "firmness"),
      ...quantities("density_kg_m3", "remelts_allowed", ...["water", "fat", "carbohydrate", "protein", "fibre", "ash"].map((part) => `label.${part}_share`)),
      ...BOUGHT,
    ],
    guide: "density",
  },
  chocolates: {
    fields: [
      NAME,
      choice("chocolate", ["dark_chocolate", "milk_chocolate", "white_chocolate"], "word"),
      { kind: "several", field: "contains", words: "allergen", options: ALLERGENS },
      ...quantities("set_s"),
    ],
    more: [
      ...quantities(...["melt_low_c", "melt_high_c", "cool_low_c", "cool_high_c", "work_low_c", "work_high_c"].map((line) => `targets.${line}`)),
      { kind: "amount", field: "pack_amount" },
      ...BOUGHT,
    ],
  },
  // The other fields of a product are those of the kind it is made as.
  products: { fields: [NAME, choice("kind", MADE, "made")] },
  bases: {
    fields: [
      NAME,
      choice("base", ["marble", "granite", "steel_sheet", "aluminium_tray", "wood_board"], "word"),
      ...quantities("length_m", "width_m", "thickness_m"),
      choice("bottom", ["still_air", "fan", "insulated"], "shop.below"),
    ],
  },
  bars: { fields: quantities("height_m", "count", "length_m") },
  tables: { fields: [NAME, ...quantities("max_length_m", "max_width_m")] },
  frames: { fields: [NAME, ...quantities("length_m", "width_m")] },
  trays: { fields: [NAME, ...quantities("length_m", "width_m", "rim_m")] },
  funnels: { fields: [NAME, ...quantities("volume_m3", "fill", "deposits_per_min")] },
  thermometers: { fields: [NAME, ...quantities("reads_low_k", "sd_k")] },
  materials: {
    fields: [
      NAME,
      choice("what", ["under", "salt", "packaging", "other"], "shop.what"),
      choice("unit", ["kg", "each"], "shop.unit"),
      { kind: "amount", field: "pack_amount" },
      { kind: "several", field: "contains", words: "allergen", options: ALLERGENS },
    ],
    more: BOUGHT,
  },
  boxes: {
    fields: [NAME, { kind: "contents", field: "lines", of: "products" }, { kind: "money", field: "price_minor" }, ...quantities("label_kg", "shelf_days")],
    more: [...quantities("tare_kg", "columns", "rows"), { kind: "contents", field: "packaging", of: "materials" }, ...quantities("label_width_m", "label_height_m", "tax_share")],
  },
  customers: { fields: [NAME, { kind: "words", field: "address", most: 300 }, { kind: "yes_no", field: "counter" }] },
  suppliers: { fields: [NAME, { kind: "words", field: "address", most: 300 }, { kind: "words", field: "phone", most: 40 }] },
  people: { fields: [NAME, { kind: "words", field: "initial", most: 3 }, { kind: "words", field: "role", most: 40 }] },
};

/** The value of a field in a row; null where none has been entered. */
export function valueOf(row: Values, field: string): unknown {
  let at: unknown = row;
  for (const name of field.split(".")) at = (at as Values | null | undefined)?.[name];
  return at ?? null;
}

/** What a row is called on screens: its name, else its size. */
export function titleOf(list: ShopList | "shop", row: Values): string {
  const name = String(row["name"] ?? "").trim();
  if (name) return name;
  if (list === "shop") return t("shop.your_shop");
  if (list === "bars" && row["height_m"]) return t("shop.bars_of", { height_m: row["height_m"] });
  return t("shop.unnamed");
}

/** The figures shown beside a row's name in lists. */
export function detailOf(list: ShopList, row: Values): string {
  const shown: Record<ShopList, string[]> = {
    ovens: ["rated_w"],
    vessels: ["mass_kg", "volume_m3"],
    caramels: ["block_kg"],
    chocolates: [],
    products: madeAs(row)?.figures ?? [],
    bases: [],
    bars: ["count", "length_m"],
    tables: ["max_length_m", "max_width_m"],
    frames: ["length_m", "width_m"],
    trays: ["length_m", "width_m"],
    funnels: ["volume_m3"],
    thermometers: [],
    materials: [],
    boxes: ["label_kg"],
    customers: ["address"],
    suppliers: ["address"],
    people: ["role"],
  };
  return shown[list]
    .filter((name) => valueOf(row, name) !== null)
    .map((name) => format(name, valueOf(row, name)))
    .join(list === "vessels" ? ", " : " × ");
}

/** The key of a field's words. */
export function keyOf(list: ShopList | "shop", field: string): string {
  return `${list}.${field.replaceAll(".", "_")}`;
}

/** What the person has changed: values by field, and which of them a test has measured. */
export interface Draft {
  values: Values;
  measured: string[];
}

export const NOTHING_CHANGED: Draft = { values: {}, measured: [] };

export function withValue(draft: Draft, field: string, value: unknown, measured = false): Draft {
  const others = draft.measured.filter((one) => one !== field);
  return { values: { ...draft.values, [field]: value }, measured: measured ? [...others, field] : others };
}

/** The edits that a draft makes. A field becomes an edit when its value differs from the row's (so edits of other fields by
 * another phone stay), when a test measured it, or when it is a list that nobody has answered yet. Fields that the form no
 * longer shows are left out. */
export function editsOf(doc: string, row: Values, draft: Draft, basis: Record<string, string> = {}): ShopEdit[] {
  const shown = valuesOf(doc.split("/")[0] as ShopList | "shop", row, draft);
  const said = (field: string, value: unknown) =>
    draft.measured.includes(field) || isUnanswered(`${doc}.${field}`, value, basis) || !isEqual(value, valueOf(row, field));
  return Object.entries(draft.values)
    .filter(([field, value]) => field in shown && said(field, value))
    .map(([field, value]) => ({ doc, field, value, basis: draft.measured.includes(field) ? "measured" : "typed" }));
}

/** The edits that take edits back: what stood before, and what it rested on. */
export function undoOf(edits: ShopEdit[], row: Values, basis: Record<string, string>): ShopEdit[] {
  return edits.map(({ doc, field }) => {
    const was = (basis[`${doc}.${field}`] ?? "typed") as ShopEdit["basis"];
    const value = valueOf(row, field);
    return { doc, field, value: isUnanswered(`${doc}.${field}`, value, basis) ? null : value, basis: was };
  });
}

function isUnanswered(place: string, value: unknown, basis: Record<string, string>): boolean {
  return Array.isArray(value) && !(place in basis);
}

function isEqual(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** The form of the kind that a product is made as. */
function madeAs(row: Values): RowForm | undefined {
  return traitsOf(row["kind"] as Kind).rows;
}

/** The fields of a form by group; of a product, only those of the kind it is made as. */
export function fieldsOf(list: ShopList | "shop", row: Values, draft: Draft): Record<"fields" | "own" | "finish" | "more", FormField[]> {
  const made = list === "products" ? madeAs({ ...row, ...draft.values }) : undefined;
  const { fields, own = [], finish = [], more = [] } = { ...FORMS[list], ...made };
  return { fields: made ? [...FORMS[list].fields, ...fields] : fields, own, finish, more };
}

/** A row as one document by field: what the engine checks as a whole. */
export function valuesOf(list: ShopList | "shop", row: ShopRow | Values, draft: Draft): Values {
  const names = Object.values(fieldsOf(list, row, draft)).flatMap((own) => own.map((one) => one.field));
  return Object.fromEntries(names.map((name) => [name, name in draft.values ? draft.values[name] : valueOf(row, name)]));
}
