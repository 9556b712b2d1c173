import type { Advice, BenchEvent, Clock, Health, FunctionName, PlanDocument, Replies, Requests, Run, Summary, Units } from "../documents";
import type { ShellState } from "../platform/swClient";

/** The engine, asked for a function's reply. */
export type Compute = <N extends FunctionName>(name: N, request: Requests[N]) => Promise<Replies[N]>;

/** What this device's reader has chosen; `units` null: those of the shop. Kept on the phone. */
export interface Settings {
  /** "en", "es", …; "" for that of the shop. */
  language: string;
  units: Units | null;
  theme: "auto" | "light" | "dark";
  /** Whether prompts and due clocks are spoken too. */
  spoken: boolean;
  /** When somebody last said that they heard the test sound (ms), or null. */
  heard_at_ms: number | null;
  /** Who is at this phone, of the shop's people; null: nobody in particular. Has nothing to do with what the phone may do. */
  person_id: string | null;
}

/** What a paired phone may do: look and print; run, record and plan; the shop, its prices and its phones. */
export type Role = NonNullable<Health["role"]>;

export interface SyncState {
  /** null until the first health check has answered or failed. */
  reachable: boolean | null;
  /** What the server says is wrong with its data, or null. */
  trouble: string | null;
  /** Events not yet on the server. */
  unsent: number;
  /** Corrected time (ms) of the oldest of them that waits to be sent, or null. */
  unsentSince: number | null;
  /** Photos not yet on the server. */
  unsentPhotos: number;
  /** Events the server would not take: kept, shown, left out of the fold, offered again after a server update. */
  refused: { event: BenchEvent; code: string }[];
  /** Events that are kept and in no fold, because their time lies more than a day ahead. */
  setAside: BenchEvent[];
  /** Since when (ms, corrected) the server has another log than the one this phone knew; null: the same one, or the
   * notice has been read. */
  anotherLogSince: number | null;
  /** When the certificate of the server ends (ms), as it last said; null: it has none of its own. */
  certificateUntil: number | null;
  /** Whether the last exchange of this session came to its end: the log it was with has what is not unsent. */
  confirmed: boolean;
  /** Corrected time of the last exchange (ms), or null. */
  lastAt: number | null;
  /** What this phone may do on the server; "none": it is not paired, or not any more; null: the server has not said yet. */
  role: Role | "none" | null;
  /** Whether the browser promised to keep our data; null: not known. */
  persistent: boolean | null;
}

/** A batch as the bench draws it. `advice` is null only until the engine has looked at a new batch for the first time. */
export interface Batch {
  batchId: string;
  plan: PlanDocument;
  /** In their total order, without refused ones. */
  events: BenchEvent[];
  run: Run | null;
  advice: Advice | null;
  /** An event is written that `run` and `advice` do not know yet. */
  pending: boolean;
  /** The engine could not fold or advise: what went wrong, for the log; the events are safe. */
  failure: string | null;
}

/** What is known of a batch that was planned together with others. */
export type SeriesMember = Pick<Batch, "batchId" | "plan" | "run">;

/** A clock that is due and not yet acknowledged. */
export interface Ring {
  batchId: string;
  clock: Clock;
  /** How late it was when it was first noticed (ms): above some 2 s the screen says so. */
  lateMs: number;
}

/** What became of a tap. "silenced": it only stopped the ringing; "ignored": too soon after another. */
export type Tap = "written" | "silenced" | "ignored";

/** Whether the phone can do without a network; "not_ready" passes by itself, the others do not (`ShellState`). */
export type OfflineState = "ready" | "not_ready" | Exclude<ShellState, "storing" | "stored">;

/** "starting" until the engine has answered once; "failed": it could not be started (it is tried again). */
export type EngineState = "starting" | "ready" | "failed";

/** "failed": the phone could not keep a fact, or gives us no room at all. Show it, and offer `exportUnsent`.
 * "emptied": the browser threw the store away while the app was open; what the app still had is written again.
 * "outdated": a newer version of the app, in another tab, has changed the store's form: this page must be loaded again. */
export type StorageState = "opening" | "open" | "failed" | "emptied" | "outdated";

/** One batch to look back at: from the server while it answers, else from this phone. */
export interface BatchRecord {
  summary: Summary;
  plan: PlanDocument;
  run: Run;
  events: BenchEvent[];
  /** Those that are in no fold, because their time lies more than a day ahead. */
  setAside: BenchEvent[];
}
