import type { Order, OrderLine } from "../../documents";
import { shop } from "../../state";
import { format, formatDay, t } from "../../text";

/** What a line is called: "40 × Box of 9". */
export function lineWords(line: Pick<OrderLine, "box_id" | "product_id" | "count" | "mass_kg">): string {
  return line.mass_kg == null ? `${line.count ?? 0} × ${nameOf(line)}` : `${format("mass_kg", line.mass_kg)} ${nameOf(line)}`;
}

export function nameOf({ box_id, product_id }: Pick<OrderLine, "box_id" | "product_id">): string {
  const known = shop.value;
  const row = box_id ? known?.boxes.find((one) => one.id === box_id) : known?.products.find((one) => one.id === product_id);
  return row?.name || t("orders.gone");
}

/** When it is wanted, or that it stands on the counter. */
export function whenWords(order: Order): string {
  return order.counter || order.wanted_ms === null ? t("orders.counter") : formatDay(order.wanted_ms);
}

/** Whether every word sought stands in an order's customer, note or lines. */
export function isFound(order: Order, sought: string): boolean {
  if (!sought) return true;
  const told = `${order.customer} ${order.note} ${order.lines.map(lineWords).join(" ")} ${whenWords(order)}`.toLocaleLowerCase();
  return sought.toLocaleLowerCase().split(/\s+/).every((word) => told.includes(word));
}
