import { expect, test } from "vitest";

import { linear, path, ticks, timeStep } from "./scale";

test("a span is drawn from end to end", () => {
  const x = linear([20, 90], [10, 350]);
  expect([x(20), x(55), x(90)]).toEqual([10, 180, 350]);
});

test("a span of nothing does not divide by nothing", () => {
  expect(Number.isFinite(linear([5, 5], [0, 100])(5))).toBe(true);
});

test("ticks are round and no more than asked for", () => {
  expect(ticks(20, 78, 4)).toEqual([20, 40, 60]);
});

test("an axis of three hours is marked by the hour", () => {
  expect(timeStep(3 * 3600, 4)).toBe(3600);
});

test("a path starts where its first point is", () => {
  expect(path([[1, 2], [3, 4]])).toBe("M1.0 2.0L3.0 4.0");
});
