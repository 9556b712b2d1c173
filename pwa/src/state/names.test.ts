import { expect, test } from "vitest";

import type { BenchEvent, Run } from "../documents";
import { freeName, renaming } from "./names";
import type { Batch } from "./types";

const HOUR = 3_600_000;

function batch(batchId: string, name: string, at_ms: number, device_id: string): Batch {
  const opened: BenchEvent = { id: `${batchId}-1`, v: 1, shop_id: "shop", batch_id: batchId, device_id, seq: 1, at_ms, offset_ms: 0, kind: "batch_opened", body: {} };
  return { batchId, plan: { name } as Batch["plan"], events: [opened], run: {} as Run, advice: null, pending: false, failure: null };
}

function called(...names: string[]) {
  return names.map((name) => ({ name, opened_at_ms: 0 }));
}

test("batches of one evening have letters that differ, whatever they are made of", () => {
  expect(freeName("Squares", [], 0)).toBe("Squares");
  expect(freeName("Pecan clusters", called("Squares"), HOUR)).toBe("Pecan clusters B");
  expect(freeName("Squares", called("Squares", "Pecan clusters B"), HOUR)).toBe("Squares C");
  expect(freeName("Squares", called("Squares", "Pecan clusters C"), HOUR)).toBe("Squares B");
  expect(freeName("Squares", called("Squares"), 13 * HOUR)).toBe("Squares");
});

test("of two batches that two phones gave one name, the later one gives way on the phone that opened it", () => {
  const both = [batch("b", "Squares B", 2 * HOUR, "phone-b"), batch("a", "Squares B", HOUR, "phone-a")];
  expect(renaming(both, "phone-a")).toBeNull();
  expect(renaming(both, "phone-b")).toEqual({ batchId: "b", name: "Squares C" });
});

test("of two opened in the same moment the one with the later id gives way", () => {
  const both = [batch("a", "Squares", HOUR, "phone-a"), batch("b", "Squares", HOUR, "phone-b")];
  expect([renaming(both, "phone-a"), renaming(both, "phone-b")]).toEqual([null, { batchId: "b", name: "Squares B" }]);
});

test("yesterday's batch of the same name and one that is still to be folded rename nothing", () => {
  const [old, fresh] = [batch("a", "Squares", 0, "phone-a"), batch("b", "Squares", 13 * HOUR, "phone-b")];
  expect(renaming([old, fresh], "phone-b")).toBeNull();
  const twin = batch("c", "Squares", 14 * HOUR, "phone-b");
  expect(renaming([fresh, { ...twin, pending: true }], "phone-b")).toBeNull();
  expect(renaming([fresh, twin], "phone-b")).toEqual({ batchId: "c", name: "Squares B" });
});
