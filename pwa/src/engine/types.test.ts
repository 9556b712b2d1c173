import { expect, expectTypeOf, test } from "vitest";

import type { BenchEvent, EventKind, FunctionName, KnownEvent, PlanDocument, Replies, Requests, Run } from "./types";

const SOURCES = import.meta.glob<string>(["../**/*.ts", "../**/*.tsx"], { query: "?raw", import: "default", eager: true });
const BY_WAY = new RegExp(["as", "unknown", "as"].join(" "));

test("no cast goes by way of unknown: documents have types", () => {
  const sources = Object.entries(SOURCES);
  expect(sources.length).toBeGreaterThan(200);
  expect(sources.filter(([, source]) => BY_WAY.test(source)).map(([path]) => path)).toEqual([]);
});

test("the kind of a run, of a plan and of an event says what else it holds", () => {
  expectTypeOf<Extract<Run, { kind: "slab" }>["cool"]["readings"]>().items.toEqualTypeOf<{ at_s: number; surface_c: number }>();
  expectTypeOf<Extract<PlanDocument, { kind: "cluster" }>["reply"]>().toEqualTypeOf<Replies["cluster.plan"]>();
  expectTypeOf<Extract<KnownEvent, { kind: "stirred" }>["body"]["free"]>().toEqualTypeOf<boolean | null | undefined>();
  expectTypeOf<KnownEvent["kind"]>().toEqualTypeOf<EventKind>();
  expectTypeOf<keyof Replies>().toEqualTypeOf<FunctionName>();
  expectTypeOf<keyof Requests>().toEqualTypeOf<FunctionName>();
  expectTypeOf<KnownEvent>().toExtend<BenchEvent>();
});
