import { beforeAll, expect, test } from "vitest";

import type { ProductRow, Shop } from "../../documents";
import { realEngine } from "../../testing/engine";
import { demoShop } from "../../testing/shop";
import { editable, format, loadLanguage, loadPlaceTexts, METRIC, reader } from "../../text";
import { clusterPlanRows } from "./clusterPlanRows";
import { type ClusterForm, clusterRequest, firstClusters, withAnotherSize, withClusters } from "./clusterForm";

let shop: Shop;
let product: ProductRow;
let form: ClusterForm;
beforeAll(async () => {
  shop = await demoShop();
  product = shop.products.find((one) => one.kind === "cluster") as ProductRow;
  form = firstClusters(shop, product);
});

/** The form with a second size of so much. */
function twoSizes(deposit_kg: number | null): ClusterForm {
  return { ...form, sizes: withAnotherSize(form.sizes).map((size) => (size.id ? { ...size, deposit_kg } : size)) };
}

test("every size is a row of the request, in laying order", () => {
  const { deposit_kg } = product.cluster;
  expect(clusterRequest(form, shop)["rows"]).toEqual([{ clusters: 60, deposit_kg }]);
  expect(clusterRequest(twoSizes(0.014), shop)["rows"]).toEqual([{ clusters: 60, deposit_kg }, { clusters: 60, deposit_kg: 0.014 }]);
});

test("what is left empty in a row is left out, so that the engine names it there", () => {
  expect(clusterRequest(twoSizes(null), shop)["rows"]).toEqual([{ clusters: 60, deposit_kg: product.cluster.deposit_kg }, { clusters: 60 }]);
});

test("one more size begins like the last and is told from it, whatever was left out before", () => {
  const three = withAnotherSize(withAnotherSize(form.sizes));
  const again = withAnotherSize(three.filter((size) => size.id !== 1));
  expect(again.map((size) => size.id)).toEqual([0, 2, 3]);
  expect(new Set(again.map((size) => size.deposit_kg)).size).toBe(1);
});

test("a deposit as the product has it keeps its basis, another one is typed", () => {
  const basis = clusterRequest(twoSizes(0.014), shop)["basis"];
  expect(basis).toHaveProperty(["rows[0].deposit_kg"], "assumed");
  expect(basis).not.toHaveProperty(["rows[1].deposit_kg"]);
});

test("caramel in hand takes the first size alone", () => {
  const request = clusterRequest({ ...twoSizes(0.014), by: "kg" }, shop);
  expect(request).toMatchObject({ caramel_kg: 1, deposit_kg: product.cluster.deposit_kg });
  expect(request).not.toHaveProperty("rows");
});

test("another product brings its own deposit in one size", () => {
  const other = shop.products.findLast((one) => one.kind === "cluster") as ProductRow;
  expect(withClusters(twoSizes(0.014), other).sizes).toEqual([{ id: 0, clusters: 60, deposit_kg: other.cluster.deposit_kg }]);
});

test("a shop in °F has windows that are typed and shown as round figures", async () => {
  const units = { ...METRIC, temperature: "°F" as const };
  const compute = await realEngine();
  const edits: [string, string, unknown][] = [["shop", "units.temperature", "°F"], ["caramels/new", "name", "New"]];
  const events = edits.map(([doc, field, value], seq) => ({ id: String(seq), v: 1, shop_id: "s", device_id: "d", seq, at_ms: seq, offset_ms: 0, batch_id: null, kind: "shop_set", body: { doc, field, value } }));
  const { shop: own } = await compute("shop.fold", { events });
  const windows = own.caramels[0]?.windows;
  const lines = [windows?.["slab"], windows?.["deposit"]].flatMap((one) => [one?.low_c, one?.high_c] as number[]);
  reader.value = { language: "en", units };
  expect(lines.map((line) => editable("window_c", line))).toEqual(["160", "170", "160", "180"]);
  expect(lines.map((line) => format("window_c", line).slice(0, 3))).toEqual(["160", "170", "160", "180"]);
  reader.value = { language: "en", units: METRIC };
});

test("the card of clusters says how long they take at the bench, reheats included", async () => {
  await Promise.all([loadLanguage("en"), loadPlaceTexts()]);
  const compute = await realEngine();
  const request = { ...clusterRequest({ ...form, sizes: [{ id: 0, clusters: 100, deposit_kg: 0.012 }], second_kg: 0 }, shop), window_low_c: 71 };
  const [wide, narrow] = [await compute("cluster.plan", { ...request, window_high_c: 82 }), await compute("cluster.plan", { ...request, window_high_c: 77 })];
  expect(narrow.reheats).toBeGreaterThan(wide.reheats + 1);
  expect(narrow.bench_s - wide.bench_s).toBeGreaterThan(150 * (narrow.reheats - wide.reheats));
  const row = clusterPlanRows(narrow).find(({ what }) => what === "plan.bench");
  expect(row?.figure).toBe(`up to ${format("s", narrow.bench_s)}`);
});
