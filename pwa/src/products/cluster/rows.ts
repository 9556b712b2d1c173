import { CARAMEL, choice, dippingFields, PREBOTTOM, quantities, type RowForm } from "../shared/rowFields";

const UNDER = ["almond", "cashew", "hazelnut", "macadamia", "peanut", "pecan", "pistachio", "walnut", "pretzel"];

/** What a product laid in clusters has, besides its name and how it is made. */
export const rows: RowForm = {
  fields: [CARAMEL, PREBOTTOM, choice("finish", ["plain", "dipped"], "finish")],
  figures: ["cluster.deposit_kg"],
  own: [
    ...quantities("cluster.deposit_kg", "cluster.second_kg", "cluster.spread_m", "cluster.gap_m", "cluster.bed_kg_m2"),
    ...["cluster.under", "cluster.also"].flatMap((one) => [choice(one, UNDER, "word"), ...quantities(`${one}_each_kg`, `${one}_count`)]),
  ],
  finish: dippingFields([]),
};
