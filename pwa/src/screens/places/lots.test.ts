import type { Signal } from "@preact/signals";
import { beforeAll, expect, test } from "vitest";

import type { Lot, LotLeft, PlanDocument, Run, Shop } from "../../documents";
import { type Batch, batches, lots, shop } from "../../state";
import { demoShop } from "../../testing/shop";
import { lotsFor, plannedOf, restOf, withLots } from "./lots";

// Of each document what the lots are chosen by, as it is read from what was kept.
const plan = (members: object): PlanDocument => JSON.parse(JSON.stringify(members));
const slab = plan({ kind: "slab", caramel_id: "caramel-firm", reply: { dip: { salt_kg: 0.03 } } });
const unsalted = plan({ kind: "slab", caramel_id: "caramel-firm", reply: { dip: { salt_kg: null } } });
const bowl = plan({ kind: "chocolate", chocolate_id: "chocolate-dark", reply: {} });
const clusters = plan({ kind: "cluster", caramel_id: "caramel-firm", reply: { under: [{ material: "pecan", kg: 0.4 }, { material: "almond", kg: 0.1 }] } });
const run = (more: object = {}): Run => JSON.parse(JSON.stringify({ out: [], uses: [], remelt: null, ...more }));
const told = (kind: string, body = {}) => ({ kind, body }) as Parameters<typeof lotsFor>[3];

function left(lot_id: string, material: string, more: Partial<LotLeft> = {}): LotLeft {
  return { lot_id, material, unit: "kg", got: 2, used: 0, left: 1, best_by: null, received_ms: 0, is_past: false, is_open: true, differences: [], ...more };
}

const stock = [
  left("over", "caramels/caramel-firm", { best_by: "2026-01-01", is_past: true }),
  left("old", "caramels/caramel-firm", { best_by: "2026-12-01" }),
  left("rest", "caramels/caramel-firm"),
  left("dark", "chocolates/chocolate-dark"),
  left("milk", "chocolates/chocolate-milk"),
  left("nuts", "materials/pecan"),
  left("salt", "materials/salt"),
];
const ids = (rows: LotLeft[]) => rows.map((one) => one.lot_id);

beforeAll(async () => {
  (shop as Signal<Shop | null>).value = await demoShop();
  (lots as Signal<Map<string, Lot>>).value = new Map(stock.map(({ lot_id, material }) => [lot_id, { id: lot_id, material, supplier_lot: lot_id, best_by: null, made_from: lot_id === "rest" ? "b-1" : null } as Lot]));
});

test("caramel, chocolate, nuts and salt are each offered where they go in, what is past its day last", () => {
  expect(ids(lotsFor(stock, slab, run(), told("weighed")))).toEqual(["old", "rest", "over"]);
  expect(ids(lotsFor(stock, bowl, run(), told("weighed")))).toEqual(["dark"]);
  expect(ids(lotsFor(stock, clusters, run(), told("under_lot_named", { material: "pecan", seen: 0 })))).toEqual(["nuts"]);
  expect(ids(lotsFor(stock, slab, run(), told("dipping_started")))).toEqual(["salt"]);
  expect(ids(lotsFor(stock, unsalted, run(), told("dipping_started")))).toEqual([]);
  expect(ids(lotsFor(stock, slab, run(), told("counted")))).toEqual([]);
});

test("leftovers go in where old caramel is asked for, deliveries where the fresh is", () => {
  const mixed = run({ remelt: { old_kg: 0.4 } });
  expect(ids(lotsFor(stock, slab, mixed, told("old_weighed")))).toEqual(["rest"]);
  expect(ids(lotsFor(stock, slab, mixed, told("weighed")))).toEqual(["old", "over"]);
});

test("several lots go in one after the other, each as far as it goes, and the fact names their numbers", () => {
  const body = withLots("weighed", { kg: 1.5, lot: null }, run(), [stock[1]!, stock[2]!], () => 0);
  expect(body).toEqual({ kg: 1.5, lot: "old, rest", lots: [{ lot_id: "old", amount: 1 }, { lot_id: "rest", amount: 0.5 }] });
  const nuts = told("under_lot_named", { material: "pecan", seen: 0 });
  expect(plannedOf(clusters, nuts, "materials/pecan")).toBe(0.4);
  expect(withLots("under_lot_named", nuts.body, run(), [stock[5]!], () => 0.4)).toEqual({ material: "pecan", seen: 0, lot: "nuts", lots: [{ lot_id: "nuts", amount: 0.4 }] });
  expect(withLots("dipping_started", {}, run(), [stock[6]!], (material) => plannedOf(slab, told("dipping_started"), material))).toEqual({ lots: [{ lot_id: "salt", amount: 0.03 }] });
});

test("what was weighed back is offered as a lot once, with its remelts and the first best by of what went in", () => {
  const back = run({ out: [{ what: "rest", kg: 0.3 }], uses: [{ lot_id: "old", amount: 1, at_ms: 0 }], remelt: { n: 2 } });
  expect(restOf("b-2", slab, back)).toMatchObject({ material: "caramels/caramel-firm", unit: "kg", batch_id: "b-2", amount: 0.3, remelts: 2 });
  expect(restOf("b-1", slab, back)).toBeNull();
  expect(restOf("b-2", slab, run())).toBeNull();
});

test("what is dipped takes its chocolate of a lot, unless a bowl in use took it", () => {
  const dipped = plan({ ...slab, product_id: shop.value!.products.find((one) => one.chocolate_id === "chocolate-dark")!.id, reply: { dip: { salt_kg: 0.03, coating_kg: 0.8, prebottom_kg: 0.1, drip_kg: 0.05 } } });
  const dipping = told("dipping_started");
  expect(ids(lotsFor(stock, dipped, run(), dipping))).toEqual(["dark", "salt"]);
  const body = withLots("dipping_started", {}, run(), [stock[3]!, stock[6]!], (material) => plannedOf(dipped, dipping, material));
  expect(body["lots"]).toEqual([{ lot_id: "dark", amount: expect.closeTo(0.95) }, { lot_id: "salt", amount: 0.03 }]);
  const bowlOf = (done: object) => new Map([["b-2", { plan: bowl, run: run({ done }) } as Batch]]);
  (batches as Signal<Map<string, Batch>>).value = bowlOf({ temper_check: 1 });
  expect(ids(lotsFor(stock, dipped, run(), dipping))).toEqual(["salt"]);
  (batches as Signal<Map<string, Batch>>).value = bowlOf({ temper_check: 1, use: 2 });
  expect(ids(lotsFor(stock, dipped, run(), dipping))).toEqual(["dark", "salt"]);
});
