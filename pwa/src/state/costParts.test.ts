import { expect, test } from "vitest";

import type { BenchEvent, Lot } from "../documents";
import { handsOf, pricedLot, pricedUses } from "./costParts";

const MINUTE_MS = 60_000;
const at = (minutes: number) => ({ at_ms: minutes * MINUTE_MS, offset_ms: 0 }) as BenchEvent;
const lot = (id: string, more: Partial<Lot>) => ({ id, material: "caramels/firm", supplier_lot: id, amount: 10, price_minor: 5000, currency: "EUR", received_ms: 0, ...more }) as Lot;

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

test("what was taken of several lots costs what each of them did, the rest what was bought last", () => {
  const all = new Map([lot("A", { price_minor: 4000 }), lot("B", { price_minor: 6000, received_ms: 5 }), lot("left", { price_minor: null }), lot("salt", { material: "materials/salt" })].map((one) => [one.id, one]));
  const uses = [{ lot_id: "A", amount: 1, at_ms: 0 }, { lot_id: "left", amount: 0.5, at_ms: 0 }, { lot_id: "salt", amount: 9, at_ms: 0 }, { lot_id: "gone", amount: 9, at_ms: 0 }];
  const priced = (amount: number) => pricedUses("Caramel", amount, "caramels/firm", all, uses, null, "EUR").map((one) => [one.amount, one.lot_price_minor]);
  expect(priced(2)).toEqual([[1, 4000], [0.5, 6000], [0.5, 6000]]);
  // More was taken than the plan says: what was taken counts.
  expect(priced(1)).toEqual([[1, 4000], [0.5, 6000]]);
  expect(pricedUses("Nuts", 1, "materials/pecan", all, uses, null, "EUR")).toEqual([{ name: "Nuts", amount: 1, lot_amount: 1, lot_price_minor: null }]);
});
