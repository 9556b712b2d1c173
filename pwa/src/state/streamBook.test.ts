import "fake-indexeddb/auto";

import { signal } from "@preact/signals";
import { expect, test } from "vitest";

import type { BenchEvent, Order } from "../documents";
import { openStore } from "../storage";
import { realEngine } from "../testing/engine";
import { StreamBook } from "./streamBook";

const T0 = Date.UTC(2026, 0, 5, 9);

function placed(nth: number): BenchEvent {
  const line = { box_id: "nine", product_id: null, count: 1 + nth, mass_kg: null };
  const body = { customer: `Customer ${nth}`, customer_id: null, wanted_ms: T0 + nth, lines: [line], price_minor: null, currency: "", note: "", repeats: null, counter: false };
  return { id: `e-${nth}`, v: 1, device_id: "another", seq: nth, shop_id: "shop", stream: `order/o-${nth}`, batch_id: null, kind: "placed", body, at_ms: T0 + nth, offset_ms: 0 };
}

test("orders that come all at once change the list once for some hundreds, not once for each", async () => {
  const store = await openStore(T0, "streams");
  const orders = signal(new Map<string, Order>());
  const parts = { store, compute: await realEngine(), phoneNow: () => T0, offsetMs: () => 0, shopId: () => "shop", wrote: () => {} };
  const book = new StreamBook<Order>(parts, "order", orders);
  await book.load();
  const events = Array.from({ length: 450 }, (_, nth) => placed(nth));
  await store.events.mergePulled(events, null);
  let drawn = 0;
  orders.subscribe(() => drawn++);
  await Promise.all(events.map((_, nth) => book.refresh(`o-${nth}`)));
  expect(orders.value.size).toBe(450);
  expect(orders.value.get("o-449")?.customer).toBe("Customer 449");
  expect(drawn).toBeLessThan(6);
});

test("an event that comes while its stream is being folded is in the document too", async () => {
  const store = await openStore(T0, "streams-late");
  const orders = signal(new Map<string, Order>());
  const parts = { store, compute: await realEngine(), phoneNow: () => T0, offsetMs: () => 0, shopId: () => "shop", wrote: () => {} };
  const book = new StreamBook<Order>(parts, "order", orders);
  await book.load();
  await store.events.mergePulled([placed(1)], null);
  const first = book.refresh("o-1");
  await book.write("o-1", [{ kind: "cancelled", body: { why: "" } }]);
  await first;
  expect(orders.value.get("o-1")?.state).toBe("cancelled");
});
