import { beforeAll, expect, test } from "vitest";

import type { BenchEvent, Shop, SlabPlan } from "../../documents";
import type { Batch } from "../../state";
import { realEngine } from "../../testing/engine";
import { demoShop } from "../../testing/shop";
import { changed } from "./meltRequest";
import { loadLanguage } from "../../text";
import { asFirst, asNext, hasNext, nextRequest } from "./series";
import { firstForm, requestOf } from "../slab/slabForm";

let shop: Shop;
let compute: Awaited<ReturnType<typeof realEngine>>;
beforeAll(async () => {
  await loadLanguage("en");
  compute = await realEngine();
  shop = await demoShop();
});

async function planned(kg: number): Promise<SlabPlan> {
  const request = requestOf(changed(firstForm(shop), { kg }), shop);
  const reply = await compute("slab.plan", request);
  return { kind: "slab", prebottom: false, product_id: null, oven_id: null, base_id: null, lot: null, ...asFirst("Squares", reply), request, reply };
}

async function planAfter(batch: Batch): Promise<Batch["plan"]> {
  const next = nextRequest(batch);
  if (!next) throw new Error("none follows");
  return asNext(batch, { request: next.request, reply: await compute(next.name, next.request) });
}

const batchOf = (batchId: string, plan: Batch["plan"]): Batch => ({ batchId, plan, events: [] as BenchEvent[], run: null, advice: null, pending: false, failure: null });

test("one slab has a name and no place among others", async () => {
  const plan = await planned(1.8);
  expect(plan.name).toBe("Squares");
  expect(plan).not.toHaveProperty("series");
});

test("what fits no bowl is started as the first of several, and the next is planned from it until all are begun", async () => {
  const first = batchOf("a", await planned(7));
  const { of } = first.plan.series ?? { of: 0 };
  expect(of).toBe(3);
  expect(first.plan.name).toBe(`Squares 1/${of}`);
  expect(hasNext(first, [first])).toBe(true);
  const second = batchOf("b", await planAfter(first));
  expect(second.plan.name).toBe(`Squares 2/${of}`);
  expect(second.plan.series).toMatchObject({ first: "a", number: 2, of });
  expect((second.plan as SlabPlan).reply.caramel_kg).toBeCloseTo(7 / of);
  expect(hasNext(first, [first, second])).toBe(false);
  expect(hasNext(second, [first, second])).toBe(true);
  const third = batchOf("c", await planAfter(second));
  const all = [first, second, third];
  expect(all.some((one) => hasNext(one, all))).toBe(false);
});
