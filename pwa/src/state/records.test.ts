import "fake-indexeddb/auto";

import { signal } from "@preact/signals";
import { afterEach, expect, test, vi } from "vitest";

import type { Summary } from "../documents";
import { openStore } from "../storage";
import { refreshSummaries, summariesWith } from "./records";
import { linksOfSummary } from "./tracing";
import type { Batch } from "./types";

afterEach(() => vi.unstubAllGlobals());

const DAY_MS = 86_400_000;
const NOW = Date.UTC(2026, 10, 30);
const PAGE = 200;

/** One batch a day, the newest first, each with a use of one lot. */
function summary(nth: number): Summary {
  const label = { lot: null, uses: [{ lot_id: "l-1", amount: 0.5, at_ms: 0 }], contains: [], labels_known: true, may_contain: [], under_lots: [], thrown_away: null };
  return { batch_id: `b-${String(nth).padStart(4, "0")}`, name: "", kind: "slab", opened_at_ms: NOW - nth * DAY_MS, closed_at_ms: NOW - nth * DAY_MS, step: "", pieces: 1, caramel_kg: 1, good_kg: 1, device_id: "a", events: 1, label } as Summary;
}

/** A server that holds so many, by pages. */
function serves(all: Summary[]): string[] {
  const asked: string[] = [];
  vi.stubGlobal("fetch", (path: string) => {
    asked.push(path);
    const before = new URL(path, "http://shop").searchParams.get("before");
    const from = before === null ? 0 : all.findIndex((one) => one.batch_id === before) + 1;
    const batches = all.slice(from, from + PAGE);
    return Promise.resolve(new Response(JSON.stringify({ batches, more: from + PAGE < all.length }), { status: 200 }));
  });
  return asked;
}

test("what batches behind the newest 200 took is known too, and then only asked for where something is new", async () => {
  const store = await openStore(NOW, "records");
  const all = Array.from({ length: 1000 }, (_, nth) => summary(nth));
  const asked = serves(all);
  await refreshSummaries(store, NOW);
  const seen = summariesWith(signal(new Map<string, Batch>()));
  // Three pages: the third goes beyond 400 days, from when no lot is open any more.
  expect(seen.value).toHaveLength(600);
  expect(seen.value.flatMap(({ label }) => label?.uses ?? [])).toHaveLength(600);
  expect(linksOfSummary(seen.value.at(-1)!)).toEqual([["lot/l-1", "batch/b-0599"]]);
  expect(asked).toHaveLength(3);
  await refreshSummaries(store, NOW);
  expect(asked).toHaveLength(4);
  serves([{ ...summary(0), batch_id: "b-new", opened_at_ms: NOW + 1 }, ...all]);
  await refreshSummaries(store, NOW);
  expect(seen.value[0]?.batch_id).toBe("b-new");
});
