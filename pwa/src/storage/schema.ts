import type { DBSchema, IDBPDatabase, IDBPTransaction, StoreNames } from "idb";

import type { Advice, BenchEvent, PlanDocument, Run } from "../documents";
import { isAhead } from "../order";
import { streamOf } from "../streams";

/** An event as it lies on the phone. */
export interface StoredEvent {
  id: string;
  stream: string;
  /** at_ms + offset_ms: the order within a stream. */
  corrected_ms: number;
  /** Its place in the server's log; null until the server has told. */
  position: number | null;
  /** 1: set aside, for its time lies too far ahead; missing from the others, so that the index holds only these. */
  ahead?: 1;
  /** When the server received one that is set aside (ms): the time at which it counts once it is let in. */
  received_ms?: number;
  event: BenchEvent;
}

/** An event the server has not acknowledged. */
export interface OutboxRow {
  id: string;
  seq: number;
  /** Why the server would not take it; null while it waits. */
  refused: string | null;
  /** Engine version of the server that refused it: a newer one is asked again. */
  refused_by: string | null;
}

/** The last look at a batch, drawn before the engine is ready; rebuilt from the events whenever in doubt. */
export interface BatchRow {
  batch_id: string;
  plan: PlanDocument;
  run: Run | null;
  advice: Advice | null;
  /** How many events `run` and `advice` know, the newest's id, and the version of the engine that folded them: missing
   * in rows of earlier apps. */
  folded: { count: number; last_id: string | null; engine_version?: string | null };
  opened_at_ms: number;
  closed_at_ms: number | null;
}

/** A picture as it was made smaller on this phone; the event `photographed` tells the rest. */
export interface PhotoRow {
  id: string;
  batch_id: string;
  blob: Blob;
}

/** A picture that still has to be sent to the server. */
export interface PhotoOutboxRow {
  id: string;
  batch_id: string;
  /** Engine version of the server that would not take it: a newer one is asked again. */
  refused_by: string | null;
}

export interface Schema extends DBSchema {
  /** `batch` and `kind` are gone: older versions had them. */
  events: {
    key: string;
    value: StoredEvent;
    indexes: { stream: [string, number]; ahead: number; batch: [string, number]; kind: [string, number] };
  };
  outbox: { key: string; value: OutboxRow; indexes: { seq: number } };
  batches: { key: string; value: BatchRow };
  photos: { key: string; value: PhotoRow; indexes: { batch: string } };
  photo_outbox: { key: string; value: PhotoOutboxRow };
  /** Single values by name: device_id, seq, log_id, cursor, cursor_mark, another_log_ms, offset_ms, settings, shop, summaries, acknowledged. */
  meta: { key: string; value: unknown };
}

type Upgrade = (
  db: IDBPDatabase<Schema>,
  transaction: IDBPTransaction<Schema, StoreNames<Schema>[], "versionchange">,
) => void | Promise<void>;

/** In order; number n leads to version n + 1. Never change one that was shipped: add another. */
export const MIGRATIONS: readonly Upgrade[] = [
  (db) => {
    db.createObjectStore("events", { keyPath: "id" }).createIndex("batch", ["batch_id", "corrected_ms"]);
    db.createObjectStore("outbox", { keyPath: "id" }).createIndex("seq", "seq");
    db.createObjectStore("batches", { keyPath: "batch_id" });
    db.createObjectStore("meta");
  },
  (_db, transaction) => {
    transaction.objectStore("events").createIndex("kind", ["event.kind", "corrected_ms"]);
  },
  (db) => {
    db.createObjectStore("photos", { keyPath: "id" }).createIndex("batch", "batch_id");
    db.createObjectStore("photo_outbox", { keyPath: "id" });
  },
  async (_db, transaction) => {
    const events = transaction.objectStore("events");
    events.createIndex("ahead", "ahead");
    for (let cursor = await events.openCursor(); cursor; cursor = await cursor.continue()) {
      const { event } = cursor.value;
      // What came from the server was kept with the server's own words; of this phone's own the next pull tells.
      const receivedMs = (event as { received_ms?: number }).received_ms ?? Date.now();
      if (isAhead(event, receivedMs)) await cursor.update({ ...cursor.value, ahead: 1 });
    }
  },
  async (_db, transaction) => {
    const events = transaction.objectStore("events");
    for (let cursor = await events.openCursor(); cursor; cursor = await cursor.continue())
      await cursor.update({ ...cursor.value, stream: streamOf(cursor.value.event) });
    events.createIndex("stream", ["stream", "corrected_ms"]);
    events.deleteIndex("batch");
    events.deleteIndex("kind");
  },
];
