import type { Batch } from "./types";

/** The other device that holds a batch. */
export interface OtherHolder {
  sinceMs: number;
  /** This phone held it before. */
  taken: boolean;
}

const TAKING_KINDS = ["batch_opened", "taken_over"];

/** The other device that holds a batch; null: this one holds it, or it is not yet known. Clocks ring, and steps are tapped, on the
 * device that holds the batch. */
export function heldByOtherDevice({ run, events }: Batch, deviceId: string): OtherHolder | null {
  const held = run?.held;
  if (!held || held.device_id === deviceId) return null;
  const taken = events.some((event) => event.device_id === deviceId && TAKING_KINDS.includes(event.kind));
  return { sinceMs: held.since_ms, taken };
}
