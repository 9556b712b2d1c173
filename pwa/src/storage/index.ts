/** The only user of IndexedDB. */
import type { BenchEvent } from "../documents";
import { BatchCache } from "./batches";
import { Connection } from "./database";
import { EventLog } from "./events";
import { Meta } from "./meta";
import { PhotoBox } from "./photos";
import { SyncCursor } from "./syncCursor";

export type { FromServer, Photo } from "./events";
export type { BatchRow } from "./schema";
export { uuid7 } from "./uuid";

export interface Store {
  events: EventLog;
  batches: BatchCache;
  meta: Meta;
  photos: PhotoBox;
  syncCursor: SyncCursor;
  deviceId: string;
  /** When the browser throws the store away while the app is open, what `keep` still has is written into a new one. */
  onLoss: (keep: () => RescuedData) => void;
}

/** What a phone still has in its memory. */
export interface RescuedData {
  events: BenchEvent[];
  meta: Record<string, unknown>;
}

/** Opens the phone's store; rejects when the browser gives us none. */
export async function openStore(nowMs: number, name?: string): Promise<Store> {
  const connection = new Connection(name);
  const meta = new Meta(connection);
  const deviceId = await meta.deviceId(nowMs);
  const events = new EventLog(connection);
  return {
    events,
    batches: new BatchCache(connection),
    meta,
    photos: new PhotoBox(connection),
    syncCursor: new SyncCursor(connection),
    deviceId,
    onLoss: (keep) => {
      connection.lost = async (db) => {
        const kept = keep();
        await events.restore(db, kept.events, deviceId);
        for (const [name, value] of Object.entries(kept.meta)) await db.put("meta", value, name);
      };
    },
  };
}
