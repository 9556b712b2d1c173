/** The state the screens draw from and the actions they call. Screens import from here and nowhere deeper. */
import { computed, type ReadonlySignal, signal } from "@preact/signals";

import type { PlanDocument, Shop, SlabPlanRequest, Summary, Units, Values } from "../documents";
import type { Awake, Batch, BatchRecord, Ring, Settings, SlabAnswer, SyncState, Tap } from "./types";

export { EngineFailure, EngineProblem } from "../problems";
export type * from "./types";

// --- signals ---
/** The shop document; null until it was fetched once or read from the phone. */
export const shop: ReadonlySignal<Shop | null> = signal(null);
export const settings: ReadonlySignal<Settings> = signal({ language: "en", units: null, theme: "auto", heard_at_ms: null });
/** The units in force: the reader's own, else the shop's. */
export const units: ReadonlySignal<Units> = computed(() => ({ mass: "kg", length: "mm", temperature: "°C", power: "W" }));
export const sync: ReadonlySignal<SyncState> = signal({ reachable: null, unsent: 0, refused: [], lastAt: null, persistent: null });
/** The open batches, and those closed since the app was opened; key batch_id, oldest first. */
export const batches: ReadonlySignal<Map<string, Batch>> = signal(new Map());
/** Corrected time (ms), ticking a few times a second: draw countdowns from it. */
export const now: ReadonlySignal<number> = signal(Date.now());
/** Due clocks nobody has acknowledged, longest due first. Non-empty: show the ring strip (too_hot: the whole screen). */
export const rings: ReadonlySignal<Ring[]> = signal([]);
/** The big button counts only from this instant (same clock as `now`); before it, draw it as not yet armed. */
export const armedAt: ReadonlySignal<number> = signal(0);
export const awake: ReadonlySignal<Awake> = signal("idle");
/** "starting" until the engine has answered once; "failed": it could not be loaded at all. */
export const engine: ReadonlySignal<"starting" | "ready" | "failed"> = signal("starting");
/** Everything needed without a network is on the phone. */
export const offlineReady: ReadonlySignal<boolean> = signal(false);
/** A new version waits; it is applied by `applyUpdate()` or by itself when no batch runs at the next start. */
export const updateWaiting: ReadonlySignal<boolean> = signal(false);
/** Summaries of batches, newest first: the server's and this phone's. */
export const summaries: ReadonlySignal<Summary[]> = signal([]);

const later = (): never => {
  throw new Error("being built");
};

// --- actions ---
export const start: () => Promise<void> = later;
export const changeSettings: (change: Partial<Settings>) => Promise<void> = later;
/** Opens a batch; resolves with its id as soon as the event is on the disk. */
export const openBatch: (plan: PlanDocument) => Promise<string> = later;
/** The one way a tap becomes an event. Resolves when it is on the disk, before the engine has looked at it. */
export const record: (batchId: string, kind: string, body: Values) => Promise<Tap> = later;
/** Takes back what `advice.undo` names. */
export const undo: (batchId: string) => Promise<Tap> = later;
/** slab.plan by the server when it answers within 1.5 s, else here. null: a later call has overtaken this one.
 * Throws EngineProblem, EngineFailure. */
export const planSlab: (request: SlabPlanRequest) => Promise<SlabAnswer | null> = later;
/** Stops the ringing and acknowledges what rang; call it on any first tap while `rings` is not empty. */
export const silence: () => void = later;
/** Plays one sound as a test, from a tap. */
export const playSound: (name: Ring["clock"]["sound"]) => void = later;
export const refreshSummaries: () => Promise<void> = later;
/** null: neither the server nor this phone has it. */
export const loadRecord: (batchId: string) => Promise<BatchRecord | null> = later;
/** Sends now, cancelling the back-off. */
export const syncNow: () => Promise<void> = later;
/** Saves all facts not yet on the server into a JSON file; resolves with their number. */
export const exportUnsent: () => Promise<number> = later;
/** Takes the waiting version; false while a batch runs. */
export const applyUpdate: () => boolean = later;
