import type { Order, Values } from "../../documents";

/** Orders wanted every week whose turn is over and that nobody has placed again: the newest of each customer. */
export function toPlaceAgain(orders: Iterable<Order>, now_ms: number): Order[] {
  const newest = new Map<string, Order>();
  for (const order of orders) {
    if (order.placed_ms === null) continue;
    const known = newest.get(order.customer);
    if (order.repeats === "week" && (!known || turnOf(order) > turnOf(known))) newest.set(order.customer, order);
  }
  return [...newest.values()].filter((one) => one.state === "handed" || (one.state !== "cancelled" && !one.counter && (one.wanted_ms ?? now_ms) < now_ms - DAY_MS));
}

const DAY_MS = 24 * 3_600_000;

function turnOf(order: Order): number {
  return (order.counter ? order.placed_ms : order.wanted_ms) ?? 0;
}

/** The same order for the next week that is not over, at the same hour by the kitchen's clock. */
export function nextTurn(order: Order, now_ms: number): Values {
  const { customer, customer_id, lines, price_minor, currency, note, repeats, counter } = order;
  const at = new Date(order.wanted_ms ?? now_ms);
  do at.setDate(at.getDate() + 7);
  while (at.getTime() < now_ms);
  return { customer, customer_id, lines, price_minor, currency, note, repeats, counter, wanted_ms: counter ? now_ms : at.getTime() };
}
