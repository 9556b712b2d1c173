import { expect, test } from "vitest";

import { scanned } from "./scanned";

test("a label of our own says its lot", () => {
  expect(scanned("LOT:25328A")).toEqual({ lot: "25328A", bestBy: "" });
});

test("a GS1 code says its lot and best before", () => {
  expect(scanned("01095060001343521527033110ABC-118")).toEqual({ lot: "ABC-118", bestBy: "2027-03-31" });
  expect(scanned("]C110118\u001D17270200")).toEqual({ lot: "118", bestBy: "2027-02-28" });
  expect(scanned("\u001D10118\u001D2145\u001D15281200")).toEqual({ lot: "118", bestBy: "2028-12-31" });
});

test("a day that is none is left to be typed", () => {
  expect(scanned("1527134010118")).toEqual({ lot: "118", bestBy: "" });
});

test("any other code is taken as it stands", () => {
  expect(scanned("4006381333931")).toEqual({ lot: "4006381333931", bestBy: "" });
  expect(scanned(" lot 7 ")).toEqual({ lot: "lot 7", bestBy: "" });
});
