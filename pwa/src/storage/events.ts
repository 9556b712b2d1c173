import type { IDBPObjectStore, IDBPTransaction, StoreNames } from "idb";

import type { BenchEvent, PushAnswer, ServedEvent, Values } from "../documents";
import { AHEAD_MS, correctedMs, inOrder, isAhead } from "../order";
import { batchOf, parseStreamId, setAsideStream, type Stream, streamOf } from "../streams";
import type { Connection, Database } from "./database";
import type { Cursor } from "./syncCursor";
import type { OutboxRow, Schema, StoredEvent } from "./schema";

type Stores = StoreNames<Schema>[];
type Writing = IDBPTransaction<Schema, Stores, "readwrite">;

const LOG: Stores = ["events", "outbox", "meta"];

/** What the caller knows of an event; the rest is filled in where it is written. */
export interface Draft {
  id: string;
  shop_id: string;
  /** "batch/<batch_id>", "shop/<shop_id>", … */
  stream: Stream;
  kind: string;
  body: Values;
  /** The phone's clock (ms) and its estimated error against the server's (ms). */
  at_ms: number;
  offset_ms: number;
}

/** A picture that an event tells of. */
export interface Photo {
  id: string;
  blob: Blob;
}

/** An event as a server of any version gives it. */
export type FromServer = BenchEvent & { position?: ServedEvent["position"] | null; received_ms?: ServedEvent["received_ms"]; flags?: ServedEvent["flags"] };
/** What a server of any version answers of an event that was sent. */
type Answered = Pick<PushAnswer, "id" | "result"> & Partial<PushAnswer>;

const STRICT = { durability: "strict" } as const;
const LOG_VERSION = 1;

/** The range of the index "stream" with every event of a stream. */
export function streamRange(stream: string): IDBKeyRange {
  return IDBKeyRange.bound([stream, -Infinity], [stream, Infinity]);
}

/** The range with every event of all streams of a kind: "0" follows "/". */
export function streamKindRange(kind: string): IDBKeyRange {
  return IDBKeyRange.bound([`${kind}/`], [`${kind}0`], false, true);
}

export class EventLog {
  /** The newest count this phone has given in this session. */
  private seq = 0;

  constructor(private readonly connection: Connection) {}

  /** Writes events again into a database that the browser has emptied; the phone's own are offered to the server again,
   * which knows them by their ids. The phone keeps its name and its count. */
  async restore(db: Database, kept: BenchEvent[], deviceId: string): Promise<void> {
    const transaction = db.transaction(["events", "outbox", "meta"], "readwrite", STRICT);
    const own = kept.filter((event) => event.device_id === deviceId);
    const outbox = transaction.objectStore("outbox");
    await transaction.objectStore("meta").put(deviceId, "device_id");
    await transaction.objectStore("meta").put(Math.max(this.seq, ...own.map((event) => event.seq)), "seq");
    for (const event of kept) await transaction.objectStore("events").put(stored(event, null));
    for (const { id, seq } of own) await outbox.put({ id, seq, refused: null, refused_by: null });
    await transaction.done;
  }

  /** Writes an event and its outbox row in one transaction and resolves when both are on the disk.
   * Its time is raised to at least 1 ms above the newest event known of its stream, so that cause precedes effect. */
  async append(draft: Draft): Promise<BenchEvent> {
    const [event] = await this.appendAll([draft]);
    if (!event) throw new Error("nothing was written");
    return event;
  }

  /** The same for an event and the picture it tells of: both or neither, though the disk be full. */
  appendPhoto(draft: Draft, { id, blob }: Photo): Promise<BenchEvent> {
    const batch_id = parseStreamId(draft.stream).id;
    return this.connection.use(async (db) => {
      const transaction: Writing = db.transaction([...LOG, "photos", "photo_outbox"], "readwrite", STRICT);
      const both = async () => {
        // First what may not find room: a request that fails takes the whole transaction back.
        await transaction.objectStore("photos").put({ id, batch_id, blob });
        await transaction.objectStore("photo_outbox").put({ id, batch_id, refused_by: null });
        return write(transaction, draft);
      };
      const [event] = await Promise.all([both(), transaction.done]);
      this.seq = event.seq;
      return event;
    });
  }

  /** The same for several at once: all of them or none. */
  appendAll(drafts: Draft[]): Promise<BenchEvent[]> {
    return this.connection.use(async (db) => {
      const transaction: Writing = db.transaction(LOG, "readwrite", STRICT);
      const written: BenchEvent[] = [];
      for (const draft of drafts) written.push(await write(transaction, draft));
      await transaction.done;
      this.seq = written.at(-1)?.seq ?? this.seq;
      return written;
    });
  }

  /** The events of a stream in their total order, without those the server refused and those set aside. */
  eventsOf(stream: Stream): Promise<BenchEvent[]> {
    return this.within(streamRange(stream));
  }

  /** The same for all streams of a kind. */
  eventsOfStreams(kind: string): Promise<BenchEvent[]> {
    return this.within(streamKindRange(kind));
  }

  /** Every event the phone holds, in their total order. */
  all(): Promise<BenchEvent[]> {
    return this.connection.use(async (db) => (await db.getAll("events")).map((row) => row.event).sort(inOrder));
  }

  /** The events that are kept and in no fold, because their time lies more than a day ahead and nobody has let them in or kept
   * them out, in their total order. */
  setAside(): Promise<BenchEvent[]> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction("events");
      const rows = await transaction.store.index("ahead").getAll();
      const said = await Promise.all(rows.map((row) => saidOf(transaction.store, row)));
      return rows.filter((_, at) => said[at] === undefined).map((row) => row.event).sort(inOrder);
    });
  }

  /** One event, and when the server received it where it is set aside (ms). */
  async get(id: string): Promise<{ event: BenchEvent; receivedMs: number | undefined } | undefined> {
    const row = await this.connection.use((db) => db.get("events", id));
    return row && { event: row.event, receivedMs: row.received_ms };
  }

  private within(range: IDBKeyRange): Promise<BenchEvent[]> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction(["events", "outbox"]);
      const rows = await transaction.objectStore("events").index("stream").getAll(range);
      const outbox = await transaction.objectStore("outbox").getAll();
      const refused = new Set(outbox.filter((row) => row.refused !== null).map((row) => row.id));
      const counting = await Promise.all(rows.filter((row) => !refused.has(row.id)).map((row) => (row.ahead ? letIn(transaction.objectStore("events"), row) : row.event)));
      return counting.filter((event) => event !== undefined).sort(inOrder);
    });
  }

  /** The events that wait to be sent, in the order they were written, at most so many. */
  waiting(most: number): Promise<BenchEvent[]> {
    return this.connection.use((db) => eventsInOutbox(db, (row) => row.refused === null, most));
  }

  /** Everything the server does not have, refused events included. */
  unsent(): Promise<BenchEvent[]> {
    return this.connection.use((db) => eventsInOutbox(db, () => true, Infinity));
  }

  refused(): Promise<{ event: BenchEvent; code: string }[]> {
    return this.connection.use(async (db) => {
      const rows = (await db.getAllFromIndex("outbox", "seq")).filter((row) => row.refused !== null);
      const found = await Promise.all(rows.map((row) => db.get("events", row.id)));
      return rows.flatMap((row, index) => {
        const event = found[index]?.event;
        return event ? [{ event, code: row.refused ?? "" }] : [];
      });
    });
  }

  unsentCount(): Promise<number> {
    return this.connection.use((db) => db.count("outbox"));
  }

  /** Takes in the server's answers: what it has leaves the outbox, what it refused stays and is marked. */
  markSent(answers: Answered[], engineVersion: string): Promise<void> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction(["events", "outbox"], "readwrite", STRICT);
      const outbox = transaction.objectStore("outbox");
      const events = transaction.objectStore("events");
      for (const { id, result, position, code } of answers) {
        const row = id ? await outbox.get(id) : undefined;
        if (!id || !row) continue;
        if (result === "refused") {
          await outbox.put({ ...row, refused: code ?? "refused", refused_by: engineVersion });
          continue;
        }
        const found = await events.get(id);
        if (found) await events.put({ ...found, position: position ?? found.position });
        await outbox.delete(id);
      }
      await transaction.done;
    });
  }

  /** Offers refused events again once the server runs another version; the number of those. */
  offerAgain(engineVersion: string): Promise<number> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction("outbox", "readwrite", STRICT);
      const rows = (await transaction.store.getAll()).filter(
        (row) => row.refused !== null && row.refused_by !== engineVersion,
      );
      for (const row of rows) await transaction.store.put({ ...row, refused: null });
      await transaction.done;
      return rows.length;
    });
  }

  /** Takes in events from the server and the cursor behind them; the streams that got something new. */
  mergePulled(pulled: FromServer[], at: Cursor | null): Promise<Set<string>> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction(["events", "outbox", "meta"], "readwrite", STRICT);
      const events = transaction.objectStore("events");
      const touched = new Set<string>();
      for (const { position, received_ms, flags: _flags, ...event } of pulled) {
        const had = await events.get(event.id);
        const row = stored(had?.event ?? event, position ?? had?.position ?? null);
        if (received_ms !== undefined && isAhead(event, received_ms)) Object.assign(row, { ahead: 1, received_ms });
        if (!had || had.ahead !== row.ahead) touched.add(row.stream);
        await events.put(row);
        // It came back from the server: so it is there, whatever became of the answer to our push.
        await transaction.objectStore("outbox").delete(event.id);
      }
      const meta = transaction.objectStore("meta");
      if (at) await Promise.all([meta.put(at.cursor, "cursor"), meta.put(at.cursor_mark, "cursor_mark")]);
      await transaction.done;
      return touched;
    });
  }
}

type Events = IDBPObjectStore<Schema, ArrayLike<StoreNames<Schema>>, "events", "readonly">;

/** What was said last by hand of an event that is set aside, if anything. */
async function saidOf(events: Events, { id }: StoredEvent): Promise<BenchEvent | undefined> {
  const said = (await events.index("stream").getAll(streamRange(setAsideStream(id)))).filter((row) => !row.ahead);
  return said.map((row) => row.event).sort(inOrder).at(-1);
}

/** An event that somebody let in, at the time at which it counts; undefined: it is set aside. */
async function letIn(events: Events, row: StoredEvent): Promise<BenchEvent | undefined> {
  const said = await saidOf(events, row);
  const at_ms = said?.kind === "let_in" ? said.body["at_ms"] : undefined;
  return typeof at_ms === "number" && at_ms >= 0 && said && at_ms <= correctedMs(said) + AHEAD_MS ? { ...row.event, at_ms, offset_ms: 0 } : undefined;
}

async function write(transaction: Writing, draft: Draft): Promise<BenchEvent> {
  const events = transaction.objectStore("events");
  // A second try after a connection that died while committing: it may be there already.
  const known = await events.get(draft.id);
  if (known) return known.event;
  const meta = transaction.objectStore("meta");
  const seq = Number((await meta.get("seq")) ?? 0) + 1;
  const device_id = String(await meta.get("device_id"));
  // What lies more than a day ahead raises nobody's clock.
  const near = IDBKeyRange.bound([draft.stream, -Infinity], [draft.stream, draft.at_ms + draft.offset_ms + AHEAD_MS]);
  let newest = await events.index("stream").openCursor(near, "prev");
  while (newest?.value.ahead) newest = await newest.continue();
  const least = newest ? newest.value.corrected_ms + 1 - draft.offset_ms : -Infinity;
  const own = { v: LOG_VERSION, device_id, seq, batch_id: batchOf(draft.stream), at_ms: Math.max(draft.at_ms, least) };
  const event: BenchEvent = { ...draft, ...own };
  await Promise.all([
    meta.put(seq, "seq"),
    events.add(stored(event, null)),
    transaction.objectStore("outbox").add({ id: event.id, seq, refused: null, refused_by: null }),
  ]);
  return event;
}

async function eventsInOutbox(db: Database, wanted: (row: OutboxRow) => boolean, most: number): Promise<BenchEvent[]> {
  const transaction = db.transaction(["events", "outbox"]);
  const rows = (await transaction.objectStore("outbox").index("seq").getAll()).filter(wanted).slice(0, most);
  const found = await Promise.all(rows.map((row) => transaction.objectStore("events").get(row.id)));
  return found.flatMap((row) => (row ? [row.event] : []));
}

function stored(event: BenchEvent, position: number | null): StoredEvent {
  return { id: event.id, stream: streamOf(event), corrected_ms: correctedMs(event), position, event };
}
