/** What went into what, both ways, from what this phone holds and, on line, from all the server holds. */
import type { Traced, TraceWalkReply } from "../documents";
import { compute } from "../engine/client";
import { saveFile } from "../platform/files";
import type { BatchRow, Store } from "../storage";
import { httpApi } from "../sync/api";
import { csv } from "./csv";
import { lots, orders, packs } from "./trade";

/** As the engine makes it of a run (`of_run` of trace/graph.py). */
function batchOf({ batch_id, run }: BatchRow) {
  if (!run) return [];
  return [
    {
      batch_id,
      is_bowl: run.bowl !== null,
      lot: run.lot,
      used_lots: (run.uses ?? []).map((one) => one.lot_id),
      dipped_lots: (run.dip?.bowls ?? []).map((one) => one.lot),
      under_lots: (run.cluster?.under_lots ?? []).map((one) => one.lot),
      leftover_lot: run.bowl?.leftover_lot ?? null,
    },
  ];
}

/** Both ways from "<kind>/<id>", by what this phone holds. Throws EngineProblem. */
export async function traceHere(store: Store, start: string): Promise<TraceWalkReply> {
  const batches = (await store.batches.all()).flatMap(batchOf);
  return compute("trace.walk", { start, batches, lots: [...lots.value.values()], packs: [...packs.value.values()], orders: [...orders.value.values()] }, "desk");
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
