import { beforeAll, expect, test } from "vitest";

import type { Shop } from "../../documents";
import { demoShop } from "../../testing/shop";
import { loadLanguage } from "../../text";
import { detailOf, type Draft, withValue, editsOf, fieldsOf, valuesOf, NOTHING_CHANGED, titleOf, undoOf, valueOf } from "./rowForms";

let shop: Shop;
beforeAll(async () => {
  await loadLanguage("en");
  shop = await demoShop();
});

const oven = () => ({ ...shop.ovens[0] });
const DOC = "ovens/oven-large";

function typed(...fields: [string, unknown][]): Draft {
  return fields.reduce((draft, [field, value]) => withValue(draft, field, value), NOTHING_CHANGED);
}

test("only what differs is written, so that another phone's fields stay", () => {
  const edits = editsOf(DOC, oven(), typed(["rated_w", 850], ["name", shop.ovens[0]?.name]));
  expect(edits).toEqual([{ doc: DOC, field: "rated_w", value: 850, basis: "typed" }]);
});

test("a value that was typed and typed back is no edit", () => {
  expect(editsOf(DOC, oven(), typed(["rated_w", 850], ["rated_w", 1000]))).toEqual([]);
});

test("a measured value is written even where it equals the assumed one, and says that it is measured", () => {
  const edits = editsOf(DOC, oven(), withValue(NOTHING_CHANGED, "rated_w", 1000, true));
  expect(edits).toEqual([{ doc: DOC, field: "rated_w", value: 1000, basis: "measured" }]);
});

test("typing over a measured value makes it typed", () => {
  const draft = withValue(withValue(NOTHING_CHANGED, "rated_w", 900, true), "rated_w", 870);
  expect(editsOf(DOC, oven(), draft)[0]?.basis).toBe("typed");
});

test("undo puts back the value and what it rested on", () => {
  const edits = editsOf(DOC, oven(), typed(["rated_w", 850]));
  expect(undoOf(edits, oven(), shop.basis)).toEqual([{ doc: DOC, field: "rated_w", value: 1000, basis: "assumed" }]);
});

test("a label that names no more than stands there is written as said, and taken back as unsaid", () => {
  const row = { contains: ["milk"] };
  const said = typed(["contains", ["milk"]]);
  const edits = editsOf("caramels/new", row, said, {});
  expect(edits).toEqual([{ doc: "caramels/new", field: "contains", value: ["milk"], basis: "typed" }]);
  expect(undoOf(edits, row, {})).toEqual([{ ...edits[0], value: null }]);
  expect(editsOf("caramels/new", row, said, { "caramels/new.contains": "typed" })).toEqual([]);
});

test("a field inside a field is found, and one that is missing is null", () => {
  expect(valueOf({ ...shop.caramels[1] }, "windows.slab.low_c")).toBe(71);
  expect(valueOf({ ...shop.caramels[0] }, "label.water_share")).toBeNull();
  expect(valueOf({}, "windows.slab.low_c")).toBeNull();
});

test("the whole row is checked with what is typed over it", () => {
  const values = valuesOf("caramels", { ...shop.caramels[0] }, typed(["stop_c", 88]));
  expect(values).toMatchObject({ "windows.slab.high_c": 77, stop_c: 88, limit_c: 93.3 });
});

test("bars are called by their height, and a row without a name says so", () => {
  expect(titleOf("bars", { ...shop.bars[0] })).toMatch(/^6\smm bars$/);
  expect(titleOf("ovens", { name: " " })).toBe("no name yet");
});

test("a product shows the fields of the way it is made, and what was typed under the other is not written", () => {
  const slab = { ...shop.products.find((one) => one.kind === "slab") };
  const asCluster = typed(["kind", "cluster"], ["slab_height_m", 900], ["cluster.deposit_kg", 0.01]);
  expect(valuesOf("products", slab, NOTHING_CHANGED)).toHaveProperty("slab_height_m");
  expect(valuesOf("products", slab, NOTHING_CHANGED)).not.toHaveProperty(["cluster.deposit_kg"]);
  expect(valuesOf("products", slab, asCluster)).not.toHaveProperty("slab_height_m");
  expect(editsOf("products/a", slab, asCluster).map((edit) => edit.field)).toEqual(["kind", "cluster.deposit_kg"]);
  expect(Object.values(fieldsOf("vessels", { ...shop.vessels[0] }, NOTHING_CHANGED)).flat()).toHaveLength(6);
});

test("lists tell clusters by their deposit, slabs by their centres", () => {
  const detail = (kind: string) => detailOf("products", { ...shop.products.find((one) => one.kind === kind) });
  expect(detail("cluster")).toMatch(/^9\sg$/);
  expect(detail("slab")).toMatch(/^24\smm × 24\smm × /);
});
