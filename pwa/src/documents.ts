/** The documents that phone, server and engine exchange: types only, readable from every layer. */

import type {
  ChocolatePlanReply,
  ChocolatePlanRequest,
  Contribution,
  ClusterPlanReply,
  ClusterPlanRequest,
  LearnFoldReply,
  MeltNextBurstReply,
  SlabPlanReply,
  SlabPlanRequest,
} from "./engine/types";

export type { ChocolatePlanReply, Contribution, CoolPlanReply, ClusterPlanReply, ClusterPlanRequest, Input, SlabPlanReply, SlabPlanRequest } from "./engine/types";

export type * from "./shopDocument";

export type Values = Record<string, unknown>;

/** A thing that was done or read, as the batch log keeps it. Order: (at_ms + offset_ms, device_id, seq). */
export interface BenchEvent {
  id: string;
  v: number;
  shop_id: string;
  device_id: string;
  seq: number;
  at_ms: number;
  offset_ms: number;
  batch_id: string | null;
  kind: string;
  body: Values;
}

/** What a batch contains by its labels, as its plan keeps it. */
export interface PlanLabels {
  contains: string[];
  /** Whether somebody copied all of them into the shop. */
  labels_known: boolean;
  /** Whether it takes chocolate from a bowl. */
  coated: boolean;
}
interface PlanHead extends Partial<PlanLabels> {
  name: string;
  product_id: string | null;
  oven_id: string | null;
  base_id: string | null;
  lot: string | null;
}
/** A slab of caramels: `request` and `reply` are those of slab.plan. */
export interface SlabPlan extends PlanHead {
  kind: "slab";
  prebottom: boolean;
  finish?: string;
  request: SlabPlanRequest;
  reply: SlabPlanReply;
}
/** A bowl of chocolate: `request` and `reply` are those of chocolate.plan. */
export interface BowlPlan extends PlanHead {
  kind: "chocolate";
  request: ChocolatePlanRequest;
  reply: ChocolatePlanReply;
}
/** A stand-up test of a caramel; nothing of it is computed beforehand. */
export interface StandPlan extends PlanHead {
  kind: "standup";
  caramel_id: string;
  request: { room_c: number };
  reply: { room_c: number; inputs: SlabPlanReply["inputs"] };
}
/** Clusters: `request` and `reply` are those of cluster.plan. */
export interface ClusterPlan extends PlanHead {
  kind: "cluster";
  finish?: string;
  request: ClusterPlanRequest;
  reply: ClusterPlanReply;
}
/** Body of `batch_opened`, field `plan`. */
export type PlanDocument = SlabPlan | ClusterPlan | BowlPlan | StandPlan;

export interface Said {
  code: string;
  values: Values;
}
/** Signal words of ISO 3864-2 and ANSI Z535.6. */
export type SignalWord = "DANGER" | "WARNING" | "CAUTION" | "NOTICE";
export type SoundName = "stir" | "read" | "ready" | "too_hot";
export interface Clock {
  name: string;
  due_ms: number;
  started_ms: number;
  sound: SoundName;
}
/** A number to type; it writes event `kind` with `body` and {[field]: value}. */
export interface Entry {
  kind: string;
  field: string;
  /** Its suffix says the unit. */
  name: string;
  low: number;
  high: number;
  last: number | null;
  likely_low: number | null;
  likely_high: number | null;
  band_low: number | null;
  band_high: number | null;
  body: Values;
}
/** A text to type (a lot): told from a number by its missing range. */
export type TextEntry = Omit<Entry, "low" | "high"> & { low: null; high: null };
/** A button: `code` is the full key of its words. It writes an event, or opens the keypad for `entry`. */
export type Action =
  | { code: string; kind: string; body: Values; entry?: undefined }
  | { code: string; entry: Entry | TextEntry; kind?: undefined; body?: undefined };

/** Reply of run.advise: everything the bench screen draws. All codes are full keys of the text catalogue. */
export interface Advice {
  step: string;
  say: Said;
  more: Said | null;
  number: { name: string; value: number; low?: number | null; high?: number | null } | null;
  clocks: Clock[];
  action: Action | null;
  choices: Action[];
  entry: Entry | TextEntry | null;
  caution: { word: SignalWord; code: string } | null;
  wants: { name: string; request: Values; kind: string; body: Values; keep: string[] } | null;
  undo: { event_id: string; code: string } | null;
  /** The reply of melt.next_burst while melting, for the ladder. */
  melt: MeltNextBurstReply | null;
}

/** A burst as the run keeps it (engine/folds_melt.py). */
export interface DoneBurst {
  seconds_s: number;
  from_c: number | null;
  expected_c: number | null;
  low_c: number | null;
  high_c: number | null;
  reading_c?: number | null;
}
/** The melt in a water jacket as the run keeps it (engine/folds_jacket.py). */
export interface JacketRun {
  seconds_s: number;
  low_s: number;
  high_s: number;
  started_ms: number | null;
  /** How much longer than planned it takes, by the looks so far. */
  slower: number;
  looks: { at_s: number; free: boolean }[];
}
export interface HeatLines {
  start_c: number;
  window_low_c: number;
  window_high_c: number;
  limit_c: number;
}
export interface MeltRun {
  bursts: DoneBurst[];
  burning: DoneBurst | null;
  request: HeatLines;
  jacket?: JacketRun | null;
}
interface CoolRun {
  ready_s: number;
  ready_low_s: number;
  ready_high_s: number;
  /** How many readings and touch tests the last refit had seen; -1 before the first. */
  fitted: number;
  readings: { at_s: number; surface_c: number }[];
  touches: { at_s: number; firm: boolean }[];
}
/** Clusters as the run keeps them (engine/folds_cluster.py). */
export interface ClusterRun {
  fills: number;
  laid: { laid_ms: number; second_ms: number | null; freed_ms: number | null }[];
}
/** Dipping as the run keeps it (engine/folds_dip.py); runs of an older app have no bowls. */
interface DipRun {
  started_ms: number | null;
  bowls?: { name: string; lot: string | null }[];
  salted: number;
}
/** A bowl of chocolate as the run keeps it (engine/folds_bowl.py); times are corrected instants. */
export interface BowlRun {
  line: Record<"melt_low_c" | "melt_high_c" | "work_low_c" | "work_high_c", number>;
  readings: { at_ms: number; bowl_c: number }[];
  seeds: { at_ms: number; kg: number }[];
  strips: { at_ms: number; good: boolean }[];
  warmed: { at_ms: number }[];
  leftover_lot: string | null;
}
/** A stand-up test as the run keeps it (engine/folds_stand.py). */
export interface StandRun {
  heights: { at_ms: number; height_m: number }[];
  lost_fraction: number | null;
  verdict: "firm" | "borderline" | "slumps" | null;
}
/** The engine's state of a batch (engine/run.py): the fields that the phone looks into. */
export interface Run {
  closed_at_ms: number | null;
  /** The phone that has the batch: its clocks ring there. */
  held: { device_id: string; since_ms: number } | null;
  lot: string | null;
  /** Good pieces counted; null before the count. */
  pieces: number | null;
  weighed_kg: number | null;
  /** What was planned: the weight to weigh in, the pieces and one of them; null where nobody counts. */
  planned: { caramel_kg: number | null; pieces: number | null; piece_kg: number | null };
  /** What was weighed at the end. */
  out: { kg: number; what: string }[];
  /** When each step was done (ms, corrected). */
  done: Record<string, number>;
  /** null: a kind of batch without it. */
  melt: MeltRun | null;
  cool: CoolRun | null;
  cluster?: ClusterRun | null;
  /** null: nothing is dipped. */
  dip?: DipRun | null;
  bowl?: BowlRun | null;
  stand?: StandRun;
  /** When hands were last at it (ms, corrected); plans and runs of an older app lack this and `wash`. */
  touched_ms?: number | null;
  wash?: { wanted: { after: string[]; allergens: string[] } | null; washed_ms: number | null; answered_ms: number | null };
  /** Why the shop leaves the batch out of what it learns; null: it does not. */
  left_out: string | null;
  /** Events that did not fit, and why. */
  ignored: { id: string | null; why: string }[];
}

/** The run of a slab. */
export interface SlabRun extends Run {
  melt: MeltRun;
  cool: CoolRun;
}

/** One row of GET /api/batches. */
export interface Summary {
  batch_id: string;
  name: string;
  kind: string;
  opened_at_ms: number;
  closed_at_ms: number | null;
  step: string;
  pieces: number | null;
  caramel_kg: number | null;
  good_kg: number | null;
  device_id: string;
  events: number;
}

/** What the shop's closed batches measured. */
export type Measured = LearnFoldReply;

/** One row of GET /api/contributions: what a closed batch teaches. */
export interface Lesson {
  batch_id: string;
  name: string;
  closed_at_ms: number;
  /** Why the shop leaves it out; null: it does not. */
  reason: string | null;
  /** null: the batch cannot be read. */
  contribution: Contribution | null;
}

/** Why one field of a request was not accepted (engine/problems.py). */
export interface ProblemDocument {
  field: string;
  code: string;
  given: unknown;
  low: number | null;
  high: number | null;
  unit: string | null;
  accepted: unknown[] | null;
  message: string;
}
