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
