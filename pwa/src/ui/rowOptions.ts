import { t } from "../text";

/** Rows of the shop as the options of a choice. */
export function rowOptions(rows: { id: string; name: string }[]) {
  return rows.map(({ id, name }) => ({ value: id, label: name || t("shop.unnamed") }));
}
