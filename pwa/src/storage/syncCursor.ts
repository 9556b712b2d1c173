import type { IDBPTransaction } from "idb";

import type { Connection } from "./database";
import type { Schema } from "./schema";

/** A position in the server's log: everything up to the event at the cursor has been pulled. */
export interface Cursor {
  cursor: number;
  /** What the server said of it, to tell whether its log is still as it was; null before the first event, and in stores
   * of an older app. */
  cursor_mark: string | null;
}

/** Which of the server's logs this phone has pulled from, and up to where. */
export class SyncCursor {
  constructor(private readonly connection: Connection) {}

  /** null before the first exchange. */
  read(): Promise<Cursor | null> {
    return this.connection.use(async (db) => {
      const [cursor, id] = await Promise.all([db.get("meta", "cursor"), db.get("meta", "cursor_mark")]);
      return cursor === undefined ? null : { cursor: Number(cursor), cursor_mark: typeof id === "string" ? id : null };
    });
  }

  /** Compares the id of the server's log with the one this phone knows; another one resets the cursor. Returns whether it had known
   * another (an older app knew none by name). */
  async recognizeLog(logId: string, nowMs: number): Promise<boolean> {
    const known = await this.connection.use((db) => db.get("meta", "log_id"));
    if (known === logId) return false;
    const isAnother = known !== undefined;
    await this.resetAndReoffer(logId, isAnother ? nowMs : null);
    return isAnother;
  }

  /** Resets the cursor and offers every event and picture on this phone again, in one transaction: the server knows by id what it
   * has. `nowMs`: since when another log is there, to be told; null: nothing to tell. */
  resetAndReoffer(logId: string, nowMs: number | null): Promise<void> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction(STORES, "readwrite", { durability: "strict" });
      await offerEvents(transaction);
      await offerPhotos(transaction);
      const meta = transaction.objectStore("meta");
      await meta.delete("cursor");
      await meta.delete("cursor_mark");
      await meta.put(logId, "log_id");
      if (nowMs !== null) await meta.put(nowMs, "another_log_ms");
      await transaction.done;
    });
  }
}

const STORES = ["meta", "events", "outbox", "photos", "photo_outbox"] as const;
type Writing = IDBPTransaction<Schema, typeof STORES, "readwrite">;

async function offerEvents(transaction: Writing): Promise<void> {
  const outbox = transaction.objectStore("outbox");
  const waiting = new Set(await outbox.getAllKeys());
  for (let row = await transaction.objectStore("events").openCursor(); row; row = await row.continue()) {
    const { id, event } = row.value;
    if (!waiting.has(id)) await outbox.put({ id, seq: event.seq, refused: null, refused_by: null });
  }
}

async function offerPhotos(transaction: Writing): Promise<void> {
  const outbox = transaction.objectStore("photo_outbox");
  const waiting = new Set(await outbox.getAllKeys());
  for (let row = await transaction.objectStore("photos").openCursor(); row; row = await row.continue()) {
    const { id, batch_id } = row.value;
    if (!waiting.has(id)) await outbox.put({ id, batch_id, refused_by: null });
  }
}
