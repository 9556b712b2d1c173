/** Orders, lots and boxes packed: what is known of them, and what is written of them once the engine has looked at it. */
import { computed, signal } from "@preact/signals";

import type { Lot, LotCheckReply, LotUse, Order, OrdersOverviewReply, Pack, StockOverviewReply, StockUse, Values } from "../documents";
import { compute } from "../engine/client";
import { summariesWith } from "./records";
import { shop } from "./shop";
import { batches } from "./signals";
import { correctedNow } from "./time";

export const lots = signal<Map<string, Lot>>(new Map());
export const orders = signal<Map<string, Order>>(new Map());
export const packs = signal<Map<string, Pack>>(new Map());

/** "2027-03-31", by the kitchen's clock. */
export function dayOf(ms: number): string {
  const at = new Date(ms);
  return [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((part) => String(part).padStart(2, "0")).join("-");
}

/** The midnight with which a day began (ms). */
export function midnightOf(ms: number): number {
  return new Date(ms).setHours(0, 0, 0, 0);
}

/** What batches took that this phone keeps, closed ones too, by batch. */
export const keptUses = signal<ReadonlyMap<string, LotUse[]>>(new Map());
export const summaries = summariesWith(batches);

/** What went into batches and boxes, by lot: of a batch what this phone knows of it, else what the server said. */
export const stockUses = computed<StockUse[]>(() => {
  const taken = new Map(summaries.value.map(({ batch_id, label }) => [batch_id, label?.uses ?? []]));
  for (const [batch_id, uses] of keptUses.value) if (!batches.value.has(batch_id)) taken.set(batch_id, uses);
  const ofBatches = [...taken].flatMap(([batch_id, uses]) => uses.map((one) => ({ ...one, batch_id })));
  const ofBoxes = [...packs.value.values()].flatMap((pack) => pack.lots.map((one) => ({ ...one, at_ms: pack.at_ms ?? 0, batch_id: null })));
  return [...ofBatches, ...ofBoxes];
});

/** All that is bought, by the name that lots give it. */
export function boughtMaterials(): { material: string; name: string; unit: "kg" | "each"; lowest: number | null; pack_amount: number | null }[] {
  const known = shop.value;
  if (!known) return [];
  return [
    ...known.caramels.map((row) => ({ material: `caramels/${row.id}`, name: row.name ?? "", unit: "kg" as const, lowest: row.lowest, pack_amount: row.block_kg ?? row.pack_amount })),
    ...known.chocolates.map((row) => ({ material: `chocolates/${row.id}`, name: row.name ?? "", unit: "kg" as const, lowest: row.lowest, pack_amount: row.pack_amount })),
    ...known.materials.map((row) => ({ material: `materials/${row.id}`, name: row.name ?? "", unit: row.unit ?? ("kg" as const), lowest: row.lowest, pack_amount: row.pack_amount })),
  ];
}

export function stockOverview(): Promise<StockOverviewReply> {
  const materials = boughtMaterials().map(({ material, unit, lowest }) => ({ material, unit, lowest }));
  return compute("stock.overview", { lots: [...lots.value.values()], uses: stockUses.value, materials, today: dayOf(correctedNow()) }, "desk");
}

export function ordersOverview(): Promise<OrdersOverviewReply> {
  const now_ms = correctedNow();
  return compute("orders.overview", { orders: [...orders.value.values()], packs: [...packs.value.values()], now_ms, today: dayOf(now_ms), today_ms: midnightOf(now_ms) }, "desk");
}

/** Refuses what makes no sense of a lot; the body to write, and what to mind. Throws EngineProblem. */
export function checkLot(lot_id: string, kind: string, body: Values): Promise<LotCheckReply> {
  const bought = boughtMaterials();
  const unit = bought.find(({ material }) => material === body.material)?.unit ?? null;
  return compute("lot.check", { ...asked(kind, body), lot_id, lots: [...lots.value.values()], uses: stockUses.value, materials: bought.map(({ material }) => material), unit }, "desk");
}

/** The same of an order. */
export function checkOrder(order_id: string | null, kind: string, body: Values): Promise<LotCheckReply> {
  const order = order_id === null ? null : (orders.value.get(order_id) ?? null);
  const boxes = (shop.value?.boxes ?? []).map((row) => row.id);
  const products = (shop.value?.products ?? []).map((row) => row.id);
  return compute("order.check", { ...asked(kind, body), today_ms: midnightOf(correctedNow()), order, boxes, products }, "desk");
}

/** What every check is asked with. */
export function asked(kind: string, body: Values) {
  const now_ms = correctedNow();
  return { kind, body, currency: shop.value?.currency ?? "", today: dayOf(now_ms), now_ms };
}
