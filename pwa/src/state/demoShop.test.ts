// @vitest-environment node
import { beforeAll, expect, test } from "vitest";

import type { BenchEvent, ShopEdit } from "../documents";
import { demoEdits, editsBack, inventedDocs, inventedTrade } from "./demoShop";

let seeded: BenchEvent[];

function event(device_id: string, edit: ShopEdit, seq: number): BenchEvent {
  return { id: `${device_id}-${seq}`, v: 1, shop_id: "shop", device_id, seq, at_ms: seq, offset_ms: 0, batch_id: null, kind: "shop_set", body: { ...edit } };
}

function typed(doc: string, field: string, value: unknown, basis: ShopEdit["basis"] = "typed"): ShopEdit {
  return { doc, field, value, basis };
}

beforeAll(async () => {
  seeded = (await demoEdits()).map((edit, seq) => event("seed", edit, seq));
});

/** What is invented once somebody has made these edits on a phone. */
async function after(...edits: ShopEdit[]): Promise<Set<string>> {
  return inventedDocs([...seeded, ...edits.map((edit, n) => event("phone", edit, 10_000 + n))]);
}

test("every row that a shop begins with is invented, and so is the shop's name", async () => {
  const rows = new Set(seeded.map(({ body }) => String(body["doc"])).filter((doc) => doc !== "shop"));
  expect(await after()).toEqual(new Set([...rows, "shop/name"]));
});

test("the invented shop is as invented when a phone took it", async () => {
  const taken = (await demoEdits()).map((edit, seq) => event("phone", edit, seq));
  expect(await inventedDocs(taken)).toEqual(await after());
});

test("the figures that older demo shops began with are invented too", async () => {
  expect(await after(typed("caramels/caramel-firm", "windows.slab.low_c", 71, "assumed"))).toEqual(await after());
  expect(await after(typed("caramels/caramel-firm", "windows.slab.low_c", 70))).not.toContain("caramels/caramel-firm");
});

test("a row of one's own, and an invented one that somebody changed or measured, are not", async () => {
  const invented = await after(
    typed("ovens/own", "name", "Blue oven"),
    typed("ovens/oven-large", "rated_w", 900),
    typed("ovens/oven-flat", "rated_w", 1400, "measured"),
    typed("shop", "name", "Ours"),
  );
  expect(await after()).toContain("ovens/oven-flat");
  for (const doc of ["ovens/own", "ovens/oven-large", "ovens/oven-flat", "shop/name"]) expect(invented).not.toContain(doc);
  expect(invented).toContain("vessels/bowl-glass");
});

test("a row that was changed and changed back, or taken away and put back, is invented again", async () => {
  const invented = await after(
    typed("ovens/oven-large", "rated_w", 900),
    typed("ovens/oven-large", "rated_w", 1000, "assumed"),
    typed("ovens/oven-flat", "removed", true),
    typed("ovens/oven-flat", "removed", false),
  );
  expect(invented).toEqual(await after());
});

test("the invented shop that was taken away is brought back from the log alone, and one's own rows stay as they are", () => {
  const gone = [typed("ovens/oven-large", "removed", true), typed("shop", "invented", false), typed("shop", "name", null)];
  const own = event("phone", typed("ovens/own", "name", "Blue oven"), 20_000);
  const events = [...seeded, own, ...gone.map((edit, n) => ({ ...event("phone", edit, 30_000 + n), at_ms: 30_000 }))];
  const back = editsBack(events);
  const said = back.map(({ doc, field, value }) => [doc, field, value]);
  const name = seeded.find(({ body }) => body["doc"] === "shop" && body["field"] === "name")?.body["value"];
  expect(said).toEqual([["ovens/oven-large", "removed", false], ["shop", "invented", true], ["shop", "name", name]]);
  expect(editsBack([...events, ...back.map((edit, n) => event("phone", edit, 40_000 + n))])).toEqual([]);
  expect(editsBack(seeded)).toEqual([]);
});

test("invented deliveries and orders go, but not what somebody wrote something of or used", () => {
  const of = (stream: string, device_id: string, kind: string, body = {}, seq = 1): BenchEvent => ({ id: `${stream} ${kind}`, v: 1, shop_id: "shop", device_id, seq, at_ms: seq, offset_ms: 0, batch_id: null, stream, kind, body });
  const events = [of("lot/a", "seed", "received"), of("lot/used", "seed", "received"), of("order/a", "seed", "placed"), of("order/own", "phone", "placed"), of("lot/counted", "seed", "received"), of("lot/counted", "phone", "left_counted")];
  const used = new Set(["used"]);
  expect(inventedTrade(events, used, false).map((one) => one.stream)).toEqual(["lot/a", "order/a"]);
  expect(inventedTrade(events, used, true)).toEqual([]);
  const gone = [...events, of("lot/a", "phone", "undone", { event_id: "lot/a received" }, 2)];
  expect(inventedTrade(gone, used, true).map((one) => one.stream)).toEqual(["lot/a"]);
});
