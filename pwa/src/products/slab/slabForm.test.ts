import { beforeAll, expect, test } from "vitest";

import type { Shop } from "../../documents";
import { demoShop } from "../../testing/shop";
import { targetsOf } from "../shared/dip";
import { changed } from "../shared/meltRequest";
import { firstForm, jacketedVessel, measuredBy, ovenAndBaseOf, requestOf, withProduct, withVessel } from "./slabForm";

let shop: Shop;
beforeAll(async () => {
  shop = await demoShop();
});

test("a plan starts from the first product's sizes", () => {
  const form = firstForm(shop);
  expect(form.piece_length_m).toBe(shop.products[0]?.piece_length_m);
});

test("caramel by weight asks for nothing else", () => {
  const request = requestOf(firstForm(shop), shop);
  expect(request["have"]).toEqual({ kg: 1.8 });
  expect(request).not.toHaveProperty("want");
});

test("boxes carry how many centres each holds", () => {
  const request = requestOf(changed(firstForm(shop), { by: "boxes", boxes: 12 }), shop);
  expect(request["want"]).toEqual({ boxes: 12, per_box: shop.products[0]?.per_box });
});

test("an emptied field is left out so that the engine names it", () => {
  expect(requestOf(changed(firstForm(shop), { slab_height_m: null }), shop)).not.toHaveProperty("slab_height_m");
});

test("the plan is told the bars as the shop has them, and what the bowl holds", () => {
  const request = requestOf(firstForm(shop), shop);
  expect(request["bars"]).toEqual(shop.bars.map(({ height_m, length_m, count }) => ({ height_m, length_m, count })));
  expect(request["basis"]).toMatchObject({ "bars[0].length_m": "assumed", vessel_volume_m3: "assumed" });
  expect(request["vessel_volume_m3"]).toBe(0.004);
});

test("old caramel is asked for only where there is some", () => {
  expect(requestOf(firstForm(shop), shop)).not.toHaveProperty("old");
  expect(requestOf(changed(firstForm(shop), { old_kg: 0.3 }), shop)["old"]).toEqual({ kg: 0.3, remelts: 0 });
  expect(requestOf(changed(firstForm(shop), { old_share: 0.2 }), shop)["old"]).toEqual({ share: 0.2, remelts: 0 });
});

test("the shop's own figures keep their basis until they are typed over", () => {
  const form = firstForm(shop);
  expect(requestOf(form, shop)["basis"]).toMatchObject({ room_c: "assumed" });
  expect(requestOf(changed(form, { room_c: 24 }), shop)["basis"]).not.toHaveProperty("room_c");
});

test("the slab is chilled in the shop's own refrigerator", () => {
  expect(requestOf(firstForm({ ...shop, fridge_c: 3 }), { ...shop, fridge_c: 3, basis: { "shop.fridge_c": "typed" } })).toMatchObject({ fridge_c: 3, basis: { fridge_c: "typed" } });
});

test("a plan names the caramel whose ready the shop has measured", () => {
  expect(ovenAndBaseOf(firstForm(shop), shop).caramel_id).toBe(shop.caramels[0]?.id);
});

test("another product brings its own sizes over what was typed", () => {
  const form = withProduct(changed(firstForm(shop), { piece_length_m: 0.03 }), shop, shop.products[1]?.id ?? "");
  expect(form.piece_length_m).toBe(shop.products[1]?.piece_length_m);
});

test("asking for centres or boxes starts from what the weight gives", () => {
  const form = firstForm(shop);
  expect(requestOf(measuredBy(form, "pieces", 204), shop)["want"]).toEqual({ pieces: 204 });
  expect(requestOf(measuredBy(form, "boxes", 204), shop)["want"]).toEqual({ boxes: 12, per_box: 16 });
  expect(measuredBy(changed(form, { pieces: 80 }), "pieces", 204).pieces).toBe(80);
});

test("a dipped product asks for its chocolate and salt, a plain one for neither", () => {
  expect(requestOf(firstForm(shop), shop)).not.toHaveProperty("dip");
  const dipped = shop.products.find((one) => one.finish === "dipped");
  const request = requestOf(withProduct(firstForm(shop), shop, dipped?.id ?? ""), shop);
  expect(request["dip"]).toMatchObject({ chocolate: "dark_chocolate", method: "fork", salt: "flaky sea salt", salt_each_kg: 0.00015, prebottom_m: 0.0005 });
  expect(request["dip"]).not.toHaveProperty("thickness_m");
  expect(request["basis"]).toMatchObject({ "dip.salt_each_kg": "assumed" });
});

test("a chocolate's own heat lines count only when all are known", () => {
  const milk = shop.chocolates.find((one) => one.chocolate === "milk_chocolate");
  const dark = shop.chocolates.find((one) => one.chocolate === "dark_chocolate");
  expect(milk && targetsOf(milk)).toMatchObject({ work_low_c: 29.5 });
  expect(dark && targetsOf(dark)).toBeUndefined();
  expect(milk && targetsOf({ ...milk, targets: { ...milk.targets, cool_low_c: null } })).toBeUndefined();
});

test("a water-jacketed vessel brings its water and asks for no oven", () => {
  const vessel = shop.vessels.find((one) => one.jacketed);
  const form = withVessel(changed(firstForm(shop), { water_c: 90 }), shop, vessel?.id ?? "");
  expect(jacketedVessel(form, shop)).toBe(vessel);
  const request = requestOf(form, shop);
  expect(request["jacket"]).toEqual({ water_c: vessel?.water_c });
  expect(request).not.toHaveProperty("oven");
  expect(request["basis"]).toMatchObject({ "jacket.water_c": "assumed" });
  const hotter = requestOf(changed(form, { water_c: 90, block: "chopped" }), shop);
  expect(hotter["jacket"]).toEqual({ water_c: 90, chopped_m: form.chopped_m });
  expect(hotter["basis"]).not.toHaveProperty("jacket.water_c");
});
