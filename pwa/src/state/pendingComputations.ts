import type { Values } from "../documents";
import type { Batch, Compute } from "./types";

interface PendingParts {
  deviceId: string;
  /** The engine at the desk: it may take a second. */
  compute: Compute;
  write: (batchId: string, kind: string, body: Values) => Promise<unknown>;
}

/** The phone that wrote the newest event answers at once, any other only after so long, in case that one is gone (ms). */
const OTHERS_WAIT_MS = 20_000;

/** Computes what a batch is waiting for (a refit) and writes the reply as an event, once. */
export class PendingComputations {
  /** Asked in this session: the batch and the request, so that a reply on its way is not asked for twice. */
  private readonly asked = new Set<string>();
  private readonly timers = new Map<string, ReturnType<typeof setTimeout>>();

  constructor(
    private readonly parts: PendingParts,
    private readonly batch: (batchId: string) => Batch | undefined,
  ) {}

  /** Starts the computation that a batch waits for, if any; called after every fold. */
  check(batchId: string): void {
    const batch = this.batch(batchId);
    clearTimeout(this.timers.get(batchId));
    if (!batch?.advice?.wants || batch.pending) return;
    const mine = batch.events.at(-1)?.device_id === this.parts.deviceId;
    if (mine) void this.answer(batch);
    else this.timers.set(batchId, setTimeout(() => this.answerLate(batchId), OTHERS_WAIT_MS));
  }

  private answerLate(batchId: string): void {
    const batch = this.batch(batchId);
    if (batch && !batch.pending) void this.answer(batch);
  }

  private async answer(batch: Batch): Promise<void> {
    const wants = batch.advice?.wants;
    if (!wants) return;
    const key = `${batch.batchId} ${wants.name} ${JSON.stringify(wants.body)} ${JSON.stringify(wants.request)}`;
    if (this.asked.has(key)) return;
    this.asked.add(key);
    try {
      const all = await this.parts.compute(wants.name, wants.request);
      const reply = Object.fromEntries(wants.keep.map((name) => [name, all[name]]));
      // Another phone was faster, or more readings came in: this answer is outdated.
      const current = this.batch(batch.batchId)?.advice?.wants;
      if (JSON.stringify(current?.body) !== JSON.stringify(wants.body)) return;
      await this.parts.write(batch.batchId, wants.kind, { ...wants.body, reply });
    } catch (error) {
      // The bench goes on with the plan it has; the next reading asks anew.
      console.warn("not computed:", wants.name, error);
    }
  }
}
