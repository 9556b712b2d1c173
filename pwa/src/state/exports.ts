/** What can be taken along as a file, with a network or without. The columns are the engine's: the server's are the same. */
import type { Summary } from "../documents";
import { compute } from "../engine/client";
import { saveFile } from "../platform/files";
import type { Store } from "../storage";
import { httpApi, type ListPlace } from "../sync/api";
import { csv } from "./csv";
import { sync } from "./syncing";
import { correctedNow } from "./time";
import type { BatchRecord } from "./types";

const CSV = "text/csv;charset=utf-8";
const JSON_TYPE = "application/json";

/** "amberbench-batches-2026-03-04.csv" */
function fileName(what: string, kind: string): string {
  return `amberbench-${what}-${new Date(correctedNow()).toISOString().slice(0, 10)}.${kind}`;
}

/** The server's own file where it has everything; else null: then the phone's is the fuller one, or the only one. */
async function serversFile(path: string): Promise<string | null> {
  if (sync.value.reachable === false || sync.value.unsent > 0) return null;
  return httpApi.file(path).catch(() => null);
}

export async function saveBatches(summaries: Summary[]): Promise<void> {
  const own = async () => csv(await compute("table.batches", { batches: summaries }, "desk"));
  saveFile(fileName("batches", "csv"), CSV, (await serversFile("/api/batches.csv")) ?? (await own()));
}

export async function saveTimeline({ events, setAside, run }: BatchRecord): Promise<void> {
  const ignored = [...run.ignored, ...setAside].flatMap(({ id }) => (id === null ? [] : [id]));
  // A plan is no column of a table, and heavy to carry into the worker.
  const withoutPlans = [...events, ...setAside].map((one) => (one.kind === "batch_opened" ? { ...one, body: {} } : one));
  const table = await compute("table.timeline", { events: withoutPlans, ignored }, "desk");
  saveFile(fileName("timeline", "csv"), CSV, csv(table));
}

export async function saveRecord(record: BatchRecord): Promise<void> {
  const document = { app: "amberbench", holds: "record", ...record };
  saveFile(fileName("record", "json"), JSON_TYPE, `${JSON.stringify(document, null, 1)}\n`);
}

/** Every event: the server's log, else what this phone holds of it. */
export async function saveLog(store: Store): Promise<void> {
  const own = async () => JSON.stringify({ app: "amberbench", holds: "log", events: await store.events.all() }, null, 1);
  saveFile(fileName("log", "json"), JSON_TYPE, (await serversFile("/api/log.json")) ?? (await own()));
}

/** All lots, orders or packs of the server as a file that `takeIn` takes in again. */
export async function saveList(place: ListPlace, kind: "csv" | "json"): Promise<void> {
  saveFile(fileName(place, kind), kind === "csv" ? CSV : JSON_TYPE, await httpApi.file(`/api/${place}.${kind}`));
}

export { takeIn } from "../sync/api";
