import { expect, test } from "vitest";

import type { Pack } from "../../documents";
import { netOf } from "../pack/netOf";
import { columnsOf, seek } from "../trace/seek";
import { pickPacks } from "./pickPacks";

const pack = (id: string, box_id: string, seconds = false) => [id, { id, box_id, seconds, code: `26${id}A`, made_on: "2026-12-04" } as Pack] as const;
const PACKS = new Map([pack("118", "nine"), pack("119", "nine"), pack("120", "nine", true), pack("121", "twelve")]);
const LEFT = [...PACKS.keys()].map((pack_id) => ({ pack_id, left: 10 }));

test("boxes are handed over from the oldest packs, none of them seconds, and what none has is of no pack", () => {
  const lines = [{ box_id: "nine", count: 25 }, { box_id: "twelve", count: 4 }];
  expect(pickPacks(lines, LEFT, PACKS)).toEqual([
    { box_id: "nine", count: 10, pack_id: "118" },
    { box_id: "nine", count: 10, pack_id: "119" },
    { box_id: "nine", count: 5, pack_id: null },
    { box_id: "twelve", count: 4, pack_id: "121" },
  ]);
});

test("two lines of one box take no box twice, and loose weight is of no pack", () => {
  const lines = [{ box_id: "nine", count: 8 }, { box_id: "nine", count: 8 }, { box_id: null, count: null }];
  expect(pickPacks(lines, LEFT, PACKS).map(({ count, pack_id }) => [count, pack_id])).toEqual([[8, "118"], [2, "118"], [6, "119"], [null, null]]);
});

test("three digits find a code, words find what a thing is called", () => {
  const words = { lot: () => "", pack: (one: Pack) => `12 × ${one.box_id}`, order: () => "", batch: () => "" };
  const known = { lots: [], packs: PACKS.values(), orders: [], batches: [] };
  expect(seek("118", { ...known, packs: PACKS.values() }, words)).toEqual(["pack/118"]);
  expect(seek("TWELVE 12", { ...known, packs: PACKS.values() }, words)).toEqual(["pack/121"]);
  expect(seek(" ", { ...known, packs: PACKS.values() }, words)).toEqual([]);
});

test("a trace stands in four columns, orders with their customers", () => {
  expect(columnsOf(["batch/b", "lot/l", "customer/c", "pack/p", "order/o"])).toEqual([["lot/l"], ["batch/b"], ["pack/p"], ["customer/c", "order/o"]]);
});

test("the tare is taken off what stands on the scale with its box", () => {
  expect(netOf(0.094, 0.028, true)).toBe(0.066);
  expect([netOf(0.094, 0.028, false), netOf(0.094, null, true)]).toEqual([0.094, 0.094]);
});
