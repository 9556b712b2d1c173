import { expect, test } from "vitest";

import type { BenchEvent, Lot } from "../documents";
import { handsOf, pricedLot } from "./costParts";

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
