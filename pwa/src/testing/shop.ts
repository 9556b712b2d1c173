/** The invented shop as the engine folds it. */
import demo from "../../../seed_data/demo_shop.json";
import type { Shop } from "../documents";
import { demoEdits } from "../state/demoShop";
import { realEngine } from "./engine";

export async function demoShop(): Promise<Shop> {
  const compute = await realEngine();
  const same = { v: 1, shop_id: demo.id, device_id: "seed", at_ms: 0, offset_ms: 0, batch_id: null, kind: "shop_set" };
  const events = (await demoEdits()).map((body, seq) => ({ ...same, id: String(seq), seq, body }));
  return (await compute("shop.fold", { shop_id: demo.id, events })).shop;
}
