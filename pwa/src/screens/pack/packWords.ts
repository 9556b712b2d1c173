import type { Pack } from "../../documents";
import { shop } from "../../state";
import { t } from "../../text";

/** The box of the shop that something was packed in; undefined: it is gone. */
export function boxOf(box_id: string | null) {
  return shop.value?.boxes.find((box) => box.id === box_id);
}

export function boxName(box_id: string | null): string {
  return boxOf(box_id)?.name || t("orders.gone");
}

/** "26338A, 19 × Box of 9". */
export function packTitle(pack: Pack): string {
  const what = `${pack.count} × ${boxName(pack.box_id)}`;
  return pack.code ? `${pack.code}, ${what}` : what;
}
