import type { Values } from "../documents";
import { isArmed } from "./runningClocks";
import type { Batch, Tap } from "./types";

interface TapParts {
  /** Corrected time (ms). */
  clock: () => number;
  batch: (batchId: string) => Batch | undefined;
  write: (batchId: string, kind: string, body: Values) => Promise<unknown>;
  /** Silences what rings; false when nothing rang. */
  silence: () => boolean;
  armedAt: () => number;
}

/** A second tap within this is the same tap in a hurry (ms). */
const SAME_TAP_MS = 700;

/** Turns taps into events: one tap, one event, whatever a glove does. */
export class TapRecorder {
  private readonly last = new Map<string, { at: number; said: string }>();

  constructor(private readonly parts: TapParts) {}

  record(batchId: string, kind: string, body: Values): Promise<Tap> {
    return this.tap(batchId, kind + JSON.stringify(body), () => this.parts.write(batchId, kind, body));
  }

  /** Takes back what the advice names; nothing while the engine has not yet looked at the latest event. */
  async undo(batchId: string): Promise<Tap> {
    const batch = this.parts.batch(batchId);
    const eventId = batch?.advice?.undo?.event_id;
    if (!batch || batch.pending || !eventId) return "ignored";
    return this.tap(batchId, "undone", () => this.parts.write(batchId, "undone", { event_id: eventId }));
  }

  /** Lets what was taken back last count again. */
  async redo(batchId: string): Promise<Tap> {
    const batch = this.parts.batch(batchId);
    const eventId = batch?.advice?.redo?.event_id;
    if (!batch || batch.pending || !eventId) return "ignored";
    return this.tap(batchId, "redone", () => this.parts.write(batchId, "redone", { event_id: eventId }));
  }

  private async tap(batchId: string, said: string, write: () => Promise<unknown>): Promise<Tap> {
    if (this.parts.silence()) return "silenced";
    const at = this.parts.clock();
    if (!isArmed(at, this.parts.armedAt())) return "ignored";
    const last = this.last.get(batchId);
    // The button under the finger changes with the first tap, so any second one counts as the same.
    if (last && Math.abs(at - last.at) < SAME_TAP_MS) return "ignored";
    // The screen still shows the button that was tapped; another one ("not yet", then "firm") is another tap.
    if (last?.said === said && this.parts.batch(batchId)?.pending) return "ignored";
    this.last.set(batchId, { at, said });
    try {
      await write();
    } catch (error) {
      this.last.delete(batchId);
      throw error;
    }
    return "written";
  }
}
