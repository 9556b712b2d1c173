import { CARAMEL, choice, dippingFields, PREBOTTOM, quantities, type RowForm } from "../shared/rowFields";

/** What a product cut from a slab has, besides its name and how it is made. */
export const rows: RowForm = {
  fields: [
    CARAMEL,
    ...quantities("piece_length_m", "piece_width_m", "slab_height_m", "per_box"),
    PREBOTTOM,
    choice("finish", ["plain", "dipped", "wrapped"], "finish"),
  ],
  figures: ["piece_length_m", "piece_width_m", "slab_height_m"],
  finish: [...dippingFields(quantities("coating.thickness_m")), ...quantities("pocket.length_m", "pocket.width_m", "pocket.height_m")],
  more: quantities("trim_m", "kerf_m"),
};
