import type { Order, Pack, Summary, TraceWalkReply } from "../../documents";
import { lots, orders, packs, shop, splitNode, summaries } from "../../state";
import { formatDay, t } from "../../text";
import { lineWords, whenWords } from "../orders/orderWords";
import { packTitle } from "../pack/packWords";
import { lotTitle } from "../stock/stockWords";

export const WORDS = {
  lot: lotTitle,
  pack: packTitle,
  order: (order: Order) => `${order.customer || t("orders.nobody")}, ${whenWords(order)}`,
  batch: (batch: Summary) => `${batch.name}, ${formatDay(batch.opened_at_ms)}`,
};

/** What is found by words typed, on this phone. */
export function known() {
  return { lots: lots.value.values(), packs: packs.value.values(), orders: orders.value.values(), batches: summaries.value };
}

/** What a node is called; `names`: as the server calls what this phone does not hold. */
export function nodeWords(node: string, names: Map<string, string> = new Map()): string {
  const [kind, id] = splitNode(node);
  const found =
    kind === "lot" ? of(lots.value.get(id), WORDS.lot)
    : kind === "pack" ? of(packs.value.get(id), WORDS.pack)
    : kind === "order" ? of(orders.value.get(id), WORDS.order)
    : kind === "batch" ? of(summaries.value.find((one) => one.batch_id === id), WORDS.batch)
    : (shop.value?.customers.find((one) => one.id === id)?.name ?? id);
  return found ?? names.get(node) ?? id;
}

function of<D>(document: D | undefined, words: (document: D) => string): string | null {
  return document === undefined ? null : words(document);
}

/** Where a node has a page of its own. */
export function pageOf(node: string): string | null {
  const [kind, id] = splitNode(node);
  const places: Record<string, string> = { lot: "stock", pack: "packs", order: "orders", batch: "batches" };
  return places[kind] ? `/${places[kind]}/${id}` : null;
}

/** How many boxes of a pack were packed, and are still in hand. */
export function countsOf(pack: Pack): { packed: number; handed: number; left: number } {
  const handed = [...orders.value.values()].flatMap((order) => order.handed).reduce((sum, one) => sum + (one.pack_id === pack.id ? (one.count ?? 0) : 0), 0);
  return { packed: pack.packed, handed, left: pack.count - handed };
}

/** What an order got of the boxes in question: "12 × Box of 9, 26336A". */
export function gotWords(order_id: string, start: string, { back, forward }: TraceWalkReply): string {
  const asked = new Set([start, ...back, ...forward]);
  const got = (orders.value.get(order_id)?.handed ?? []).filter(({ pack_id }) => asked.has(`pack/${pack_id}`));
  return got.map((one) => `${lineWords(one)}, ${packs.value.get(one.pack_id ?? "")?.code ?? ""}`).join("; ");
}
