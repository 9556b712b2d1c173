import { expect, test } from "vitest";

import type { PlanDocument } from "../documents";
import { batchForWorker } from "../state/replayRequest";
import { hasSheet, KINDS, traitsOf } from "./traitRegistry";
import { benchViewsOf } from "./benchViews";
import { placeViewsOf } from "./placeViews";

const SOURCES = import.meta.glob<string>(["../**/*.ts", "../**/*.tsx", "!../**/*.test.ts", "!../**/*.proof.ts"], { query: "?raw", import: "default", eager: true });
/** A kind's name as a word of its own; a class of the style sheets is none. */
const NAMED = new RegExp(`(?<!class=)["'\`](${KINDS.join("|")})["'\`]`);
/** An import of one product's files: what is asked of a kind goes by the registries. */
const IMPORTED = new RegExp(`products/(${KINDS.join("|")})/`);

const OUTSIDE = Object.entries(SOURCES).filter(([path]) => !path.startsWith("./") && !path.endsWith("engine/types.ts"));

test("outside its folder nothing asks for the name of a kind", () => {
  expect(OUTSIDE.length).toBeGreaterThan(100);
  expect(OUTSIDE.filter(([, source]) => NAMED.test(source)).map(([path]) => path)).toEqual([]);
  expect(OUTSIDE.filter(([, source]) => IMPORTED.test(source)).map(([path]) => path)).toEqual([]);
});

test("no product reaches into another's folder", () => {
  const reaching = Object.entries(SOURCES).filter(([path, source]) => {
    const own = path.split("/")[1] ?? "";
    return KINDS.includes(own as (typeof KINDS)[number]) && KINDS.some((other) => other !== own && source.includes(`"../${other}/`));
  });
  expect(reaching.map(([path]) => path)).toEqual([]);
});

test("what several products share knows none of them", () => {
  const shared = Object.entries(SOURCES).filter(([path]) => path.startsWith("./shared/"));
  expect(shared.length).toBeGreaterThan(10);
  expect(shared.filter(([, source]) => KINDS.some((kind) => source.includes(`"../${kind}/`))).map(([path]) => path)).toEqual([]);
});

test("every kind has its form, or is begun elsewhere, and every form its own address", () => {
  const routes = KINDS.map((kind) => traitsOf(kind).route);
  expect(KINDS.map((kind) => Boolean(placeViewsOf(kind).Form))).toEqual(routes.map(Boolean));
  expect(new Set(routes.filter(Boolean)).size).toBe(routes.filter(Boolean).length);
  for (const kind of KINDS) expect(Boolean(placeViewsOf(kind).Sheet), kind).toBe(traitsOf(kind).sheet !== undefined);
});

test("a batch of a kind that only a newer version knows is kept, and nothing of it breaks", () => {
  const plan: PlanDocument = JSON.parse('{"kind": "lollipop", "name": "Later", "request": {"kg": 1}, "reply": {"caramel_kg": 1}}');
  expect(batchForWorker(plan, [])).toEqual({ plan: { kind: "lollipop", name: "Later", reply: { caramel_kg: 1 } }, events: [] });
  expect(hasSheet(plan)).toBe(false);
  expect(benchViewsOf(plan.kind)).toEqual({});
  expect(placeViewsOf(plan.kind)).toEqual({});
});
