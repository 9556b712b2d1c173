/** What went into what, both ways, from what this phone holds and, on line, from all the server holds. */
import type { Lot, Order, Pack, Summary, Traced, TraceWalkReply } from "../documents";
import { compute } from "../engine/client";
import { saveFile } from "../platform/files";
import type { Kind } from "../products/kindTraits";
import { traitsOf } from "../products/traitRegistry";
import type { BatchRow, Store } from "../storage";
import { httpApi } from "../sync/api";
import { csv } from "./csv";
import { lots, orders, packs, summaries } from "./trade";

/** From what went in to what came of it. */
type Link = [string, string];

/** A lot by the name that was typed: `links_of_…` of trace/graph.py make the same. */
function names(list: string, typed: (string | null | undefined)[]): string[] {
  return typed.flatMap((lot) => (lot?.trim() ? [`name/${list}#${lot.trim().toLowerCase()}`] : []));
}

export function linksOfLot({ id, made_from, merged_into, material, supplier_lot }: Lot): Link[] {
  const node = `lot/${id}`;
  const from = made_from ? [`batch/${made_from}`] : [];
  const to = [...(merged_into ? [`lot/${merged_into}`] : []), ...names(material.split("/")[0]!, [supplier_lot])];
  return [...from.map((one): Link => [one, node]), ...to.map((one): Link => [node, one])];
}

export function linksOfBatch({ batch_id, run }: Pick<BatchRow, "batch_id" | "run">): Link[] {
  if (!run) return [];
  const node = `batch/${batch_id}`;
  const bowls = (run.dip?.bowls ?? []).map((one) => one.lot);
  const under = (run.cluster?.under_lots ?? []).map((one) => one.lot);
  const named = [...names(run.bowl ? "chocolates" : "caramels", [run.lot]), ...names("chocolates", bowls), ...names("materials", under)];
  const taken = (run.uses ?? []).map((one) => `lot/${one.lot_id}`);
  const left = names("chocolates", [run.bowl?.leftover_lot]);
  return [...[...named, ...taken].map((one): Link => [one, node]), ...left.map((one): Link => [node, one])];
}

/** Of a batch that this phone does not hold any more what its line in the list says. */
export function linksOfSummary({ batch_id, kind, label }: Summary): Link[] {
  const named = [...names(traitsOf(kind as Kind).lendsChocolate ? "chocolates" : "caramels", [label?.lot]), ...names("materials", (label?.under_lots ?? []).map((one) => one.lot))];
  return [...named, ...(label?.uses ?? []).map((one) => `lot/${one.lot_id}`)].map((one): Link => [one, `batch/${batch_id}`]);
}

export function linksOfPack({ id, from, lots: packedIn }: Pack): Link[] {
  const node = `pack/${id}`;
  const of = from.flatMap(({ batch_id }) => (batch_id ? [`batch/${batch_id}`] : []));
  return [...of, ...packedIn.map(({ lot_id }) => `lot/${lot_id}`)].map((one): Link => [one, node]);
}

export function linksOfOrder({ id, customer_id, customer, handed }: Order): Link[] {
  const node = `order/${id}`;
  const found = handed.flatMap(({ pack_id }): Link[] => (pack_id ? [[`pack/${pack_id}`, node]] : []));
  const named = customer_id || customer;
  return found.length > 0 && named ? [...found, [node, `customer/${named}`]] : found;
}

/** The links among what leads to a node and what it leads to: of a busy shop's thousands a few. On the server the database finds
 * them (store/link_queries.py). */
export function around(start: string, links: Link[]): Link[] {
  const reached = (near: 0 | 1, far: 0 | 1) => {
    const next = new Map<string, string[]>();
    for (const link of links) {
      const known = next.get(link[near]);
      if (known) known.push(link[far]);
      else next.set(link[near], [link[far]]);
    }
    const found = new Set([start]);
    for (const node of found) for (const other of next.get(node) ?? []) found.add(other);
    return found;
  };
  const [back, forward] = [reached(1, 0), reached(0, 1)];
  return links.filter(([from, to]) => back.has(to) || forward.has(from) || (back.has(from) && forward.has(to)));
}

/** Both ways from "<kind>/<id>", by what this phone holds. Throws EngineProblem. */
export async function traceHere(store: Store, start: string): Promise<TraceWalkReply> {
  const held = await store.batches.all();
  const whole = new Set(held.map(({ batch_id }) => batch_id));
  const links = [
    ...held.flatMap(linksOfBatch),
    ...summaries.value.filter(({ batch_id }) => !whole.has(batch_id)).flatMap(linksOfSummary),
    ...[...lots.value.values()].flatMap(linksOfLot),
    ...[...packs.value.values()].flatMap(linksOfPack),
    ...[...orders.value.values()].flatMap(linksOfOrder),
  ];
  const cell = (node: string) => node.replace(/[\t\n]/g, " ");
  return compute("trace.walk", { start: cell(start), links: around(start, links).map((ends) => ends.map(cell).join("\t")).join("\n") }, "desk");
}

/** The same by all years on the server, with names of what the phone does not hold; null: it cannot be asked now. */
export function traceThere(start: string): Promise<Traced | null> {
  return httpApi.trace(start).catch(() => null);
}

/** Saves a trace as CSV: what, its id, its name, its place in the chain. */
export function saveTrace(start: string, rows: { node: string; way: string; name: string }[]): Promise<void> {
  const cells = rows.map(({ node, way, name }) => [way, ...split(node), guarded(name)]);
  const file = csv({ columns: ["way", "kind", "id", "name"], instants: [], rows: cells });
  saveFile(`amberbench-trace-${split(start).join("-").replace(/[^\w-]/g, "_").slice(0, 60)}.csv`, "text/csv;charset=utf-8", file);
  return Promise.resolve();
}

/** Kind and id of a node. */
export function split(node: string): [string, string] {
  const at = node.indexOf("/");
  return [node.slice(0, at), node.slice(at + 1)];
}

/** A cell that a spreadsheet would run as a formula begins with an apostrophe. */
function guarded(cell: string): string {
  return /^[=+\-@\t\r]/.test(cell) ? `'${cell}` : cell;
}
