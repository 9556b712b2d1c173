/** Signals that several parts of the state write; each has one writer, named beside it. */
import { signal } from "@preact/signals";

import type { ShellState } from "../platform/swClient";
import type { SoundState } from "../platform/sound";
import type { WakeState } from "../platform/wakeLock";
import type { BatchOrderReply } from "../engine/types";
import type { Batch, EngineState, Ring, SeriesMember, StorageState } from "./types";

/** By BatchBook. */
export const batches = signal<Map<string, Batch>>(new Map());
export const seriesBefore = signal<Map<string, SeriesMember>>(new Map());
/** By BatchOrder; null until the engine has answered once. */
export const batchOrder = signal<BatchOrderReply | null>(null);
/** The name of this phone in the log; "" until the store is open. */
export const deviceId = signal("");
/** By RunningClocks. */
export const rings = signal<Ring[]>([]);
export const armedAt = signal(0);
/** By RunningClocks: a clock runs that nobody has acknowledged. */
export const willRing = signal(false);
/** By the sound. */
export const sound = signal<SoundState>("waiting");
/** By the wake lock. */
export const awake = signal<WakeState>("idle");
/** By the engine's client. */
export const engine = signal<EngineState>("starting");
export const engineVersion = signal<string | null>(null);
/** By the service-worker client. */
export const shell = signal<ShellState>("storing");
export const updateWaiting = signal(false);
/** By whatever writes to the store. */
export const storage = signal<StorageState>("opening");

/** The state of the store after an error: "outdated" when a newer version of the app, in another tab, has changed its schema. */
export function storageErrorState(error: unknown): "failed" | "outdated" {
  return error instanceof DOMException && error.name === "VersionError" ? "outdated" : "failed";
}
