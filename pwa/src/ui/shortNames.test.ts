import { expect, test } from "vitest";

import { shortNames } from "./shortNames";

test("a size behind a comma or in brackets is left out", () => {
  expect(shortNames(["Squares, 24 mm", "Dark chocolate", "Batons (60 by 18)"])).toEqual(["Squares", "Dark chocolate", "Batons"]);
});

test("two of one product keep the letter that tells them apart", () => {
  expect(shortNames(["Squares, 24 mm", "Squares, 24 mm B"])).toEqual(["Squares", "Squares B"]);
});

test("two products of one short name keep their sizes", () => {
  expect(shortNames(["Squares, 24 mm", "Squares, 30 mm", "Pecans"])).toEqual(["Squares, 24 mm", "Squares, 30 mm", "Pecans"]);
});

test("two clocks of one batch have one name, and no name is lost", () => {
  expect(shortNames(["Squares, 24 mm", "Squares, 24 mm", ", "])).toEqual(["Squares", "Squares", ", "]);
});
