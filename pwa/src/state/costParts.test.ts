import type { Signal } from "@preact/signals";
import { expect, test } from "vitest";

import type { BenchEvent, Lot, Shop } from "../documents";
import { demoShop } from "../testing/shop";
import { ofLot } from "./boxLabel";
import { handsOf, pricedLot, pricedUses } from "./costParts";
import { costRequest } from "./costs";
import { shop } from "./shop";
import { lots } from "./trade";
import type { BatchRecord } from "./types";

const MINUTE_MS = 60_000;
const at = (minutes: number) => ({ at_ms: minutes * MINUTE_MS, offset_ms: 0 }) as BenchEvent;
const lot = (id: string, more: Partial<Lot>) => ({ id, material: "caramels/firm", supplier_lot: id, unit: "kg", made_from: null, amount: 10, price_minor: 5000, currency: "EUR", received_ms: 0, ...more }) as Lot;

test("hands are at a batch between taps that lie close together, not while it cools", () => {
  expect(handsOf([at(4), at(0), at(64), at(66)])).toBe((4 + 2) * 60);
  expect(handsOf([])).toBe(0);
});

test("the price is that of the lot typed, else of the last delivery, in the shop's currency alone", () => {
  const all = [lot("A", {}), lot("B", { received_ms: 5 }), lot("C", { received_ms: 9, currency: "USD" }), lot("D", { received_ms: 9, price_minor: null })];
  expect(pricedLot(all, "caramels/firm", " a ", "EUR")?.id).toBe("A");
  expect(pricedLot(all, "caramels/firm", "unknown", "EUR")?.id).toBe("B");
  expect(pricedLot(all, "caramels/soft", "A", "EUR")).toBe(null);
});

test("a price without a currency is in the shop's, and one for pieces is none for kilograms", () => {
  expect(pricedLot([lot("A", { currency: "" })], "caramels/firm", null, "EUR")?.id).toBe("A");
  expect(pricedLot([lot("A", {}), lot("B", { unit: "each", received_ms: 9 })], "caramels/firm", null, "EUR")?.id).toBe("A");
  const nuts = new Map([lot("N", { unit: "each", amount: 500 })].map((one) => [one.id, one]));
  const uses = pricedUses("Nuts", 0.6, "caramels/firm", nuts, [{ lot_id: "N", amount: 250, at_ms: 0 }], null, "EUR");
  expect(uses).toEqual([{ name: "Nuts", amount: 250, lot_amount: 500, lot_price_minor: 5000 }]);
});

/** 50 clusters of 20 g of caramel on 10 g of nuts, 1.25 kg of caramel weighed. */
function clusters(good: number, back: BatchRecord["run"]["out"] = []): BatchRecord {
  const plan = { kind: "cluster", caramel_id: "caramel-firm", product_id: "p", reply: { clusters: 50, deposits_kg: 1, under: [{ material: "pecan", kg: 0.5 }] } };
  const run = { pieces: good, weighed_kg: 1.25, planned: { pieces: 50, piece_kg: 0.03 }, lot: null, dip: null, uses: [], out: back };
  return JSON.parse(JSON.stringify({ summary: { batch_id: "b" }, plan, run, events: [], setAside: [] }));
}

test("waste is of the caramel alone, and what was weighed back is charged to the batch it goes into", async () => {
  (shop as Signal<Shop | null>).value = await demoShop();
  const known = { ...shop.value!, currency: "EUR" };
  const delivery = lot("d", { material: "caramels/caramel-firm" });
  (lots as Signal<Map<string, Lot>>).value = new Map([["d", delivery]]);
  const caramel_kg = (record: BatchRecord) => costRequest(known, record).uses[0]!.amount;
  expect(costRequest(known, clusters(50)).waste_share).toBeCloseTo(1 - 1 / 1.25);
  expect(caramel_kg(clusters(50))).toBeCloseTo(1.25);
  expect(caramel_kg(clusters(50, [{ what: "rest", kg: 0.25 }] as BatchRecord["run"]["out"]))).toBeCloseTo(1);
  lots.value.set("rest", lot("rest", { material: "caramels/caramel-firm", made_from: "b", amount: 0.25, price_minor: null }));
  expect(caramel_kg(clusters(50))).toBeCloseTo(1);
  expect(costRequest(known, clusters(50)).waste_share).toBeCloseTo(0);
  const next = { ...clusters(50), summary: { batch_id: "next" } } as BatchRecord;
  next.run = { ...next.run, uses: [{ lot_id: "d", amount: 1, at_ms: 0 }, { lot_id: "rest", amount: 0.25, at_ms: 0 }] };
  expect(costRequest(known, next).uses.filter(({ lot_price_minor }) => lot_price_minor === 5000).reduce((sum, { amount }) => sum + amount, 0)).toBeCloseTo(1.25);
});

test("a ribbon is no ingredient, and what is counted does not weigh as many kilograms", async () => {
  const known = await demoShop();
  const row = { ...known.materials[0]!, id: "x", name: "X", ingredients: "" };
  const put = (what: "other" | "under", unit: Lot["unit"], basis: Shop["basis"] = known.basis) => ofLot({ ...known, basis, materials: [{ ...row, what }] }, lot("l", { material: "materials/x", unit }), 40).map(({ kg }) => kg);
  expect(put("other", "each")).toEqual([]);
  expect(put("other", "each", { "materials/x.contains": "typed" })).toEqual([0]);
  expect(put("under", "kg")).toEqual([40]);
});

test("what was taken of several lots costs what each of them did, the rest what was bought last", () => {
  const all = new Map([lot("A", { price_minor: 4000 }), lot("B", { price_minor: 6000, received_ms: 5 }), lot("left", { price_minor: null }), lot("salt", { material: "materials/salt" })].map((one) => [one.id, one]));
  const uses = [{ lot_id: "A", amount: 1, at_ms: 0 }, { lot_id: "left", amount: 0.5, at_ms: 0 }, { lot_id: "salt", amount: 9, at_ms: 0 }, { lot_id: "gone", amount: 9, at_ms: 0 }];
  const priced = (amount: number) => pricedUses("Caramel", amount, "caramels/firm", all, uses, null, "EUR").map((one) => [one.amount, one.lot_price_minor]);
  expect(priced(2)).toEqual([[1, 4000], [0.5, 6000], [0.5, 6000]]);
  // More was taken than the plan says: what was taken counts.
  expect(priced(1)).toEqual([[1, 4000], [0.5, 6000]]);
  expect(pricedUses("Nuts", 1, "materials/pecan", all, uses, null, "EUR")).toEqual([{ name: "Nuts", amount: 1, lot_amount: 1, lot_price_minor: null }]);
});
