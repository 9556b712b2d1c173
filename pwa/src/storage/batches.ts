import { batchStream, parseStreamId } from "../streams";
import type { Connection } from "./database";
import { streamKindRange, streamRange } from "./events";
import type { BatchRow } from "./schema";

const DAY_MS = 86_400_000;
/** Acknowledged events of closed batches leave the phone after so long; the server keeps them. */
const KEEP_CLOSED_MS = 30 * DAY_MS;

export class BatchCache {
  constructor(private readonly connection: Connection) {}

  all(): Promise<BatchRow[]> {
    return this.connection.use((db) => db.getAll("batches"));
  }

  get(batchId: string): Promise<BatchRow | undefined> {
    return this.connection.use((db) => db.get("batches", batchId));
  }

  async put(row: BatchRow): Promise<void> {
    await this.connection.use((db) => db.put("batches", row));
  }

  async forget(batchId: string): Promise<void> {
    await this.connection.use((db) => db.delete("batches", batchId));
  }

  /** Ids of batches there are events of but no cached row. */
  uncached(): Promise<string[]> {
    return this.connection.use(async (db) => {
      const ids = new Set<string>();
      const index = db.transaction("events").store.index("stream");
      // One step per batch: from the last event of one to the first of the next.
      let cursor = await index.openKeyCursor(streamKindRange("batch"));
      while (cursor) {
        const [stream] = cursor.key;
        ids.add(parseStreamId(stream).id);
        cursor = await cursor.continue([stream, Infinity]);
      }
      for (const key of await db.getAllKeys("batches")) ids.delete(key);
      return [...ids];
    });
  }

  /** Forgets batches closed long ago of which the server has every event and picture, once it was backed up after this phone sent
   * its last (`backup_ms` and `sent_ms`, kept by the exchange): a server that breaks before that asks its phones for them. */
  forgetOld(nowMs: number): Promise<void> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction(["meta", "events", "outbox", "batches", "photos", "photo_outbox"], "readwrite");
      const meta = transaction.objectStore("meta");
      const [backupMs, sentMs] = await Promise.all([meta.get("backup_ms"), meta.get("sent_ms")]);
      if (typeof backupMs !== "number" || backupMs < Number(sentMs ?? 0)) return;
      const photos = transaction.objectStore("photos");
      const sending = new Set((await transaction.objectStore("photo_outbox").getAll()).map((row) => row.batch_id));
      const events = transaction.objectStore("events");
      const unsent = new Set(await transaction.objectStore("outbox").getAllKeys());
      for (const row of await transaction.objectStore("batches").getAll()) {
        if (row.closed_at_ms === null || row.closed_at_ms > Math.min(nowMs - KEEP_CLOSED_MS, backupMs) || sending.has(row.batch_id)) continue;
        const keys = await events.index("stream").getAllKeys(streamRange(batchStream(row.batch_id)));
        if (keys.some((key) => unsent.has(key))) continue;
        for (const key of keys) await events.delete(key);
        for (const key of await photos.index("batch").getAllKeys(row.batch_id)) await photos.delete(key);
        await transaction.objectStore("batches").delete(row.batch_id);
      }
      await transaction.done;
    });
  }
}
