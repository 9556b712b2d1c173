import { expect, test } from "vitest";

import type { Shop } from "../../documents";
import { boxable } from "./dayPlan";

const boxes = [{ id: "nine", lines: [{ product_id: "square", count: 9 }] }, { id: "assorted", lines: [{ product_id: "square", count: 6 }, { product_id: "cluster", count: 3 }] }] as Shop["boxes"];
const order = (order_id: string, box_id: string, missing: number) => ({ order_id, wanted_ms: null, lines: [{ box_id, product_id: null, missing }] });

test("boxes of which pieces are in no plan yet are not to be filled; those wanted last lack them first", () => {
  const open = [order("first", "nine", 4), order("second", "assorted", 2), order("last", "nine", 1)];
  const ids = (missing: { product_id: string; wanted: number }[]) => boxable(open, missing, boxes).map(({ order_id }) => order_id);
  expect(ids([])).toEqual(["first", "second", "last"]);
  expect(ids([{ product_id: "square", wanted: 5 }])).toEqual(["first", "second"]);
  expect(ids([{ product_id: "square", wanted: 15 }])).toEqual(["first"]);
  expect(ids([{ product_id: "cluster", wanted: 1 }])).toEqual(["first", "last"]);
  expect(ids([{ product_id: "square", wanted: 57 }, { product_id: "cluster", wanted: 6 }])).toEqual([]);
});
