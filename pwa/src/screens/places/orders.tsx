import { OrdersScreen } from "../orders/OrdersScreen";

/** /orders, /orders/new, /orders/needs, /orders/<id>, /orders/<id>/change. */
export function Screen({ at }: { at: string }) {
  const [, , id, part] = at.split("/");
  return <OrdersScreen id={id} part={part} />;
}
