import type { Batch } from "./types";

/** Another phone has the batch. */
export interface Elsewhere {
  sinceMs: number;
  /** This phone had it before. */
  taken: boolean;
}

const TAKING_KINDS = ["batch_opened", "taken_over"];

/** Which other phone has a batch; null: this one, or nobody yet knows. Clocks ring, and steps are tapped, where it is. */
export function elsewhere({ run, events }: Batch, deviceId: string): Elsewhere | null {
  const held = run?.held;
  if (!held || held.device_id === deviceId) return null;
  const taken = events.some((event) => event.device_id === deviceId && TAKING_KINDS.includes(event.kind));
  return { sinceMs: held.since_ms, taken };
}
