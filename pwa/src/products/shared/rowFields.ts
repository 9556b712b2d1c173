/** The kinds of fields in the shop's forms, and the fields that the forms of several products share. */

/** A field of a form. Its words are `shop.<list>.<field>` and `shop.hint.<list>.<field>`, points as underlines. */
export type FormField =
  | { kind: "words"; field: string; most: number }
  /** A number; the end of its name says the unit. */
  | { kind: "quantity"; field: string }
  | { kind: "choice"; field: string; options: (string | number)[]; words: string }
  | { kind: "yes_no"; field: string }
  | { kind: "several"; field: string; options: string[]; words: string }
  /** Any of a few whole numbers, each written by the sentence `words`. */
  | { kind: "numbers"; field: string; options: number[]; words: string }
  /** One of the shop's caramels, chocolates or suppliers. */
  | { kind: "row"; of: "caramels" | "chocolates" | "suppliers"; field: string }
  /** An amount of what is bought, in kg or by the piece as its row says. */
  | { kind: "amount"; field: string }
  /** A time of day, every half hour (s from midnight). */
  | { kind: "clock"; field: string }
  /** Money, in the smallest coin. */
  | { kind: "money"; field: string }
  /** So many each of several rows of the shop: what is in a box, what it is packed in. */
  | { kind: "contents"; field: string; of: "products" | "materials" };

export interface RowForm {
  fields: FormField[];
  /** Folded away until asked for. */
  more?: FormField[];
  /** A group of its own, open from the start: the fields that only this way of making a product has. */
  own?: FormField[];
  /** A group of its own, open from the start: how the product is finished. */
  finish?: FormField[];
  /** The fields shown beside a row's name in lists. */
  figures?: string[];
  /** The test that measures one of the fields. */
  guide?: "density" | "water";
}

export const NAME: FormField = { kind: "words", field: "name", most: 60 };
export const quantities = (...fields: string[]): FormField[] => fields.map((field) => ({ kind: "quantity", field }));
export const choice = (field: string, options: (string | number)[], words: string): FormField => ({ kind: "choice", field, options, words });

/** What the product fields of several kinds have in common. */
export const CARAMEL: FormField = { kind: "row", of: "caramels", field: "caramel_id" };
export const PREBOTTOM: FormField = { kind: "yes_no", field: "prebottom" };
/** The chocolate of a dipped product, and how it is dipped: sizes where it has sides to measure. */
export function dippingFields(layer: FormField[]): FormField[] {
  return [
    { kind: "row", of: "chocolates", field: "chocolate_id" },
    choice("coating.method", ["fork", "enrober", "enrober_with_bottomer"], "word"),
    ...layer,
    ...quantities("coating.pickup_share", "coating.prebottom_m", "coating.bowl_width_m", "coating.dip_s"),
    { kind: "yes_no", field: "coating.top_mark" },
    { kind: "words", field: "coating.salt", most: 60 },
    ...quantities("coating.salt_each_kg"),
  ];
}
