import { expect, test } from "vitest";

import type { Shop } from "../../documents";
import { demoShop } from "../../testing/shop";
import { ovenRequest } from "./meltRequest";

test("a power from a water test is told from one on a plate", async () => {
  const shop = await demoShop();
  const oven_id = shop.ovens[0]?.id ?? "";
  const asked = (basis: Shop["basis"][string]) =>
    ovenRequest({ oven_id, vessel_id: "" }, { ...shop, basis: { ...shop.basis, [`ovens/${oven_id}.rated_w`]: basis } }).oven;
  expect(asked("measured")).toMatchObject({ rated_w: shop.ovens[0]?.rated_w, measured_in: "water" });
  expect(asked("typed")).not.toHaveProperty("measured_in");
});

test("a bowl that nobody weighed is planned as one that is not known, not refused", async () => {
  const shop = await demoShop();
  const bowl = { ...shop.vessels[0]!, id: "unweighed", mass_kg: null } as never;
  expect(ovenRequest({ oven_id: "", vessel_id: "unweighed" }, { ...shop, vessels: [...shop.vessels, bowl] }).vessel).toBeUndefined();
  expect(ovenRequest({ oven_id: "", vessel_id: shop.vessels[0]!.id }, shop).vessel).toMatchObject({ mass_kg: shop.vessels[0]!.mass_kg });
});
