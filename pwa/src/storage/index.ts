/** The only user of IndexedDB. */
import { BatchCache } from "./batches";
import { Connection } from "./database";
import { EventLog } from "./events";
import { Meta } from "./meta";

export type { PushAnswer } from "./events";
export type { BatchRow } from "./schema";
export { uuid7 } from "./uuid";

export interface Store {
  events: EventLog;
  batches: BatchCache;
  meta: Meta;
  deviceId: string;
}

/** Opens the phone's store; rejects when the browser gives us none. */
export async function openStore(nowMs: number, name?: string): Promise<Store> {
  const connection = new Connection(name);
  const meta = new Meta(connection);
  const deviceId = await meta.deviceId(nowMs);
  return {
    events: new EventLog(connection),
    batches: new BatchCache(connection),
    meta,
    deviceId,
  };
}
