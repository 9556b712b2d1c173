import { expect, test } from "vitest";

import type { Order } from "../../documents";
import { nextTurn, toPlaceAgain } from "./weekly";

const FRIDAY = new Date(2026, 9, 23, 15).getTime();
const order = (more: Partial<Order>) => ({ id: "a", customer: "Bakery", placed_ms: FRIDAY - 1e8, wanted_ms: FRIDAY, repeats: "week", state: "handed", counter: false, lines: [], ...more }) as Order;

test("an order wanted every week is offered again once it is handed over", () => {
  expect(toPlaceAgain([order({ state: "open" })], FRIDAY - 1)).toEqual([]);
  expect(toPlaceAgain([order({})], FRIDAY - 1).map(({ id }) => id)).toEqual(["a"]);
  expect(toPlaceAgain([order({ repeats: null })], FRIDAY + 1)).toEqual([]);
  expect(toPlaceAgain([order({ state: "cancelled" })], FRIDAY + 1)).toEqual([]);
});

test("it is not offered again where next week's is placed already", () => {
  expect(toPlaceAgain([order({}), order({ id: "b", wanted_ms: FRIDAY + 7 * 864e5, state: "open" })], FRIDAY + 1)).toEqual([]);
});

test("next week's is wanted at the same hour, also where a clock is put back between, and never in the past", () => {
  expect(new Date(nextTurn(order({}), FRIDAY)["wanted_ms"] as number)).toEqual(new Date(2026, 9, 30, 15));
  expect(new Date(nextTurn(order({}), FRIDAY + 15 * 864e5)["wanted_ms"] as number)).toEqual(new Date(2026, 10, 13, 15));
});
