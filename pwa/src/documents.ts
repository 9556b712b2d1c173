/** The documents that phone, server and engine exchange: types only, readable from every layer. */

import type {
  ChocolateBowlReply,
  ChocolateBowlRequest,
  Contribution,
  LearnFoldReply,
  MeltNextBurstReply,
  SlabPlanReply,
  SlabPlanRequest,
} from "./engine/types";

export type { ChocolateBowlReply, Contribution, CoolPlanReply, Input, SlabPlanReply, SlabPlanRequest } from "./engine/types";

export type Values = Record<string, unknown>;

export interface Units {
  mass: "kg" | "g" | "lb" | "oz";
  length: "mm" | "cm" | "m" | "in";
  temperature: "°C" | "°F";
  power: "W";
}

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

interface Oven {
  id: string;
  name: string;
  rated_w: number;
  turntable: boolean;
  step_s: number;
  unevenness: number | null;
}
interface Vessel {
  id: string;
  name: string;
  mass_kg: number;
  made_of: string;
  heat_capacity_j_kgk: number;
  /** Whether it stands in a water jacket, and what that is kept at. */
  jacketed: boolean;
  water_c: number;
}
interface Base {
  id: string;
  name: string;
  base: unknown;
  contact_m2k_w: number;
  bottom: unknown;
}
interface Caramel {
  id: string;
  name: string;
  material: unknown;
  block_kg: number | null;
  windows: Record<string, { low_c: number; high_c: number }>;
  limit_c: number;
  warn_c: number;
  stop_c: number;
  contains: string[];
  /** What a squeeze at delivery and a stand-up test said; null: neither was made. */
  squeeze: string | null;
  firmness: string | null;
}
export interface Chocolate {
  id: string;
  name: string;
  chocolate: "dark_chocolate" | "milk_chocolate" | "white_chocolate";
  set_s: number;
  /** Its own heat lines; null where its label says nothing. */
  targets: Record<string, number | null>;
  contains: string[];
}
export interface Product {
  id: string;
  name: string;
  kind: string;
  caramel_id: string;
  piece_length_m: number;
  piece_width_m: number;
  slab_height_m: number;
  trim_m: number;
  kerf_m: number;
  per_box: number;
  prebottom: boolean;
  finish: string;
  chocolate_id: string | null;
  coating: {
    method: string;
    thickness_m: number | null;
    pickup_share: number | null;
    prebottom_m: number;
    dip_s: number;
    top_mark: boolean;
    salt: string | null;
    salt_each_kg: number | null;
  };
  pocket: { length_m: number | null; width_m: number | null; height_m: number | null };
}

/** A list of the shop. */
export type ShopList =
  | "ovens"
  | "vessels"
  | "caramels"
  | "chocolates"
  | "products"
  | "bases"
  | "bars"
  | "tables"
  | "frames"
  | "trays"
  | "thermometers";

/** One field of the shop as the log has it: doc is "shop" or "<list>/<id>"; value null takes it back. */
export interface ShopEdit {
  doc: string;
  field: string;
  value: unknown;
  basis: "typed" | "measured" | "published" | "assumed";
}

/** The fold of all `shop_set` (engine/shop.py), and GET /api/shop. What nobody has set is null or stands as assumed. */
export interface Shop {
  id: string;
  /** What a value rests on, by "<list>/<id>.<field>" or "shop.<field>". */
  basis: Record<string, string>;
  name: string;
  invented: boolean;
  language: string;
  units: Units;
  room_c: number;
  /** Usual relative humidity, 0 to 1; null: nobody measured it. */
  humidity: number | null;
  ovens: Oven[];
  vessels: Vessel[];
  bases: Base[];
  bars: { id: string; height_m: number; count: number; length_m: number }[];
  tables: { id: string; name: string; max_length_m: number; max_width_m: number }[];
  frames: { id: string; name: string; length_m: number; width_m: number }[];
  trays: { id: string; name: string; length_m: number; width_m: number; rim_m: number }[];
  thermometers: { id: string; name: string; reads_low_k: number; sd_k: number }[];
  caramels: Caramel[];
  chocolates: Chocolate[];
  products: Product[];
}

interface PlanHead {
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
/** A bowl of chocolate: `request` and `reply` are those of chocolate.bowl. */
export interface BowlPlan extends PlanHead {
  kind: "chocolate";
  request: ChocolateBowlRequest;
  reply: ChocolateBowlReply;
}
/** A stand-up test of a caramel; nothing of it is computed beforehand. */
export interface StandPlan extends PlanHead {
  kind: "standup";
  caramel_id: string;
  request: { room_c: number };
  reply: { room_c: number; inputs: SlabPlanReply["inputs"] };
}
/** Body of `batch_opened`, field `plan`. */
export type PlanDocument = SlabPlan | BowlPlan | StandPlan;

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

/** A burst as the run keeps it (engine/folds.py). */
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
interface MeltRun {
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
/** A bowl of chocolate as the run keeps it (engine/folds_bowl.py). */
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
  bowl?: BowlRun | null;
  stand?: StandRun;
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
