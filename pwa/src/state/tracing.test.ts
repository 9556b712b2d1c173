import { expect, test } from "vitest";

import type { Lot, Order, Pack, Run } from "../documents";
import { around, linksOfBatch, linksOfLot, linksOfOrder, linksOfPack } from "./tracing";

// As `test_documents_become_links` of tests/engine/test_trace.py has it.
test("documents become the links that the engine makes of them on the server", () => {
  const lot = { id: "l", made_from: "b", merged_into: "m", material: "caramels/firm", supplier_lot: " K-118 " } as Lot;
  expect(linksOfLot(lot)).toEqual([["batch/b", "lot/l"], ["lot/l", "lot/m"], ["lot/l", "name/caramels#k-118"]]);
  const bowl = { bowl: { leftover_lot: "rest" }, lot: "D7" } as Run;
  expect(linksOfBatch({ batch_id: "c", run: bowl })).toEqual([["name/chocolates#d7", "batch/c"], ["batch/c", "name/chocolates#rest"]]);
  const run = { bowl: null, lot: "k-118", uses: [{ lot_id: "l" }, { lot_id: "m" }], dip: { bowls: [{ lot: "D7" }, { lot: null }] }, cluster: { under_lots: [{ lot: "9" }] } } as Run;
  expect(linksOfBatch({ batch_id: "b", run })).toEqual([
    ["name/caramels#k-118", "batch/b"],
    ["name/chocolates#d7", "batch/b"],
    ["name/materials#9", "batch/b"],
    ["lot/l", "batch/b"],
    ["lot/m", "batch/b"],
  ]);
  expect(linksOfBatch({ batch_id: "new", run: null })).toEqual([]);
  const pack = { id: "p", from: [{ batch_id: "b", pieces: 9 }], lots: [{ lot_id: "boxes", amount: 1 }] } as Pack;
  expect(linksOfPack(pack)).toEqual([["batch/b", "pack/p"], ["lot/boxes", "pack/p"]]);
  const order = { id: "o", customer_id: null, customer: "Ana", handed: [{ pack_id: "p" }] } as Order;
  expect(linksOfOrder(order)).toEqual([["pack/p", "order/o"], ["order/o", "customer/Ana"]]);
  expect(linksOfOrder({ ...order, handed: [] })).toEqual([]);
});

test("of all links those are asked about that lie around the start, through names and past it", () => {
  const near: [string, string][] = [
    ["lot/a", "name/caramels#1"],
    ["name/caramels#1", "batch/x"],
    ["batch/x", "pack/p"],
    ["lot/a", "pack/p"],
    ["pack/p", "order/o"],
  ];
  const far: [string, string][] = [["lot/b", "batch/y"], ["batch/y", "pack/q"]];
  expect(around("batch/x", [...far, ...near])).toEqual(near);
  expect(around("lot/a", [...near, ["batch/x", "lot/a"], ...far])).toEqual([...near, ["batch/x", "lot/a"]]);
  expect(around("lot/nobody", near)).toEqual([]);
});
