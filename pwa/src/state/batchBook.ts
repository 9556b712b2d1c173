import { signal } from "@preact/signals";

import type { Advice, BenchEvent, PlanDocument, Run, Values } from "../documents";
import { correctedMs, isOfKind } from "../order";
import { traitsOf } from "../products/traitRegistry";
import type { BatchRow, Photo, Store } from "../storage";
import { uuid7 } from "../storage";
import { batchStream } from "../streams";
import { decidedBodies } from "./decisions";
import { batchForWorker } from "./replayRequest";
import type { Batch, Compute, SeriesMember } from "./types";

interface BookParts {
  store: Store;
  /** The engine at the bench. */
  compute: Compute;
  /** The phone's clock and its error (ms). */
  phoneNow: () => number;
  offsetMs: () => number;
  shopId: () => string;
  /** The engine's version; null before it is ready. */
  engineVersion: () => string | null;
  /** Something was written to the log. */
  wrote: (batchId: string) => void;
}

/** A batch closed since so long is one of today's: what it left on the bench still counts (ms). */
const TODAY_MS = 12 * 3_600_000;

/** The open batches and those closed today: their events, their fold and what to do next. */
export class BatchBook {
  private readonly folding = new Map<string, Promise<void>>();
  private readonly dirty = new Set<string>();

  constructor(
    private readonly parts: BookParts,
    readonly batches = signal<Map<string, Batch>>(new Map()),
    /** Closed before: those that were planned together with others, which may still be to come. */
    readonly seriesBefore = signal<Map<string, SeriesMember>>(new Map()),
  ) {}

  /** Shows the batches as they were last seen, before the engine is ready; the ids to fold again. */
  async load(): Promise<string[]> {
    const { store, phoneNow, offsetMs } = this.parts;
    const since = phoneNow() + offsetMs() - TODAY_MS;
    const kept = await store.batches.all();
    const rows = kept.filter((row) => row.closed_at_ms === null || row.closed_at_ms > since);
    const before = kept.filter((row) => row.plan.series && !rows.includes(row));
    this.seriesBefore.value = new Map(before.map(({ batch_id, plan, run }) => [batch_id, { batchId: batch_id, plan, run }]));
    const shown = await Promise.all(rows.map((row) => this.fromRow(row)));
    shown.sort((a, b) => openedMs(a.events) - openedMs(b.events));
    this.batches.value = new Map(shown.map((batch) => [batch.batchId, batch]));
    return [...shown.map((batch) => batch.batchId), ...(await store.batches.uncached())];
  }

  /** Folds the kept batches again that another engine folded; whether there were any. Those that are shown are folded
   * at every start. One after the other, so that a tap waits for one at most. */
  async foldOutdated(): Promise<boolean> {
    const version = this.parts.engineVersion();
    const kept = (await this.parts.store.batches.all()).filter((row) => !this.batches.value.has(row.batch_id));
    const outdated = kept.filter((row) => row.folded.engine_version !== version);
    for (const row of outdated) await this.refresh(row.batch_id);
    return outdated.length > 0;
  }

  /** Writes an event of a batch, with what the engine decides as it is told and the picture it tells of; resolves when
   * it is on the disk, before the engine has folded it. Its time is that of the call. */
  async write(batchId: string, kind: string, body: Values, photo?: Photo): Promise<BenchEvent> {
    const { compute, store, phoneNow, offsetMs, shopId, wrote } = this.parts;
    const at_ms = phoneNow();
    const draft = { id: uuid7(at_ms), shop_id: shopId(), stream: batchStream(batchId), kind, body, at_ms, offset_ms: offsetMs() };
    const pending = this.batches.value.get(batchId)?.pending ?? false;
    this.change(batchId, { pending: true });
    try {
      const fact = { kind, body, at_ms: at_ms + draft.offset_ms };
      [draft.body = body] = await decidedBodies(compute, this.runNow(batchId), [fact]);
      const event = await (photo ? store.events.appendPhoto(draft, photo) : store.events.append(draft));
      this.change(batchId, { events: [...(this.batches.value.get(batchId)?.events ?? []), event], pending: true });
      void this.refresh(batchId);
      wrote(batchId);
      return event;
    } catch (error) {
      this.change(batchId, { pending });
      throw error;
    }
  }

  /** The run with all that was written of a batch; null when it is not shown or could not be folded. */
  private async runNow(batchId: string): Promise<Run | null> {
    await this.folding.get(batchId);
    const batch = this.batches.value.get(batchId);
    return batch && batch.failure === null ? batch.run : null;
  }

  private change(batchId: string, parts: Partial<Batch>): void {
    const batch = this.batches.value.get(batchId);
    if (batch) this.put({ ...batch, ...parts });
  }

  /** Writes what was done by the kitchen's clock (ms) and typed later, all or none, and has it folded; run: the batch
   * before that. */
  async writeAll(batchId: string, run: Run, facts: { kind: string; body: Values; at_ms: number }[]): Promise<void> {
    const { compute, store, phoneNow, shopId, wrote } = this.parts;
    const bodies = await decidedBodies(compute, Promise.resolve(run), facts);
    // Not this phone's clock: its error says nothing of these times.
    const same = { shop_id: shopId(), stream: batchStream(batchId), offset_ms: 0 };
    const drafts = facts.map((fact, index) => ({ ...fact, ...same, body: bodies[index] ?? fact.body, id: uuid7(phoneNow()) }));
    await store.events.appendAll(drafts);
    wrote(batchId);
    await this.refresh(batchId);
  }

  /** Folds a batch again from its events, once more if something came in meanwhile. Never rejects. */
  refresh(batchId: string): Promise<void> {
    this.dirty.add(batchId);
    let running = this.folding.get(batchId);
    if (!running) {
      running = this.foldWhileDirty(batchId).finally(() => this.folding.delete(batchId));
      this.folding.set(batchId, running);
    }
    return running;
  }

  /** Asks the engine again what to do, without new events: time has passed. */
  async look(batchId: string): Promise<void> {
    const batch = this.batches.value.get(batchId);
    if (!batch?.run || batch.pending || this.folding.has(batchId)) return;
    const { run, events } = batch;
    try {
      const advice = await this.advise(run);
      const current = this.batches.value.get(batchId);
      // Where something was written meanwhile, the fold will tell.
      if (current?.events === events) this.put({ ...current, advice });
    } catch (error) {
      await this.tellBroken(batchId, error);
    }
  }

  /** Shows that the app broke over a batch: all that was told of it is kept, and the others go on. */
  private async tellBroken(batchId: string, error: unknown): Promise<void> {
    console.error("batch cannot be folded:", batchId, error);
    const failure = String(error);
    if (this.batches.value.has(batchId)) return this.change(batchId, { failure });
    const [events, row] = [await this.parts.store.events.eventsOf(batchStream(batchId)), await this.parts.store.batches.get(batchId)];
    const plan = planOf(events);
    // One that was closed before this session is a record, not a running batch.
    if (plan && row?.closed_at_ms == null) this.put({ batchId, plan, events, run: null, advice: null, pending: false, failure });
  }

  private async foldWhileDirty(batchId: string): Promise<void> {
    // Let the screen draw the tap first.
    await Promise.resolve();
    while (this.dirty.delete(batchId)) {
      try {
        await this.fold(batchId);
      } catch (error) {
        await this.tellBroken(batchId, error).catch(() => {});
      }
    }
  }

  private async fold(batchId: string): Promise<void> {
    const events = await this.parts.store.events.eventsOf(batchStream(batchId));
    const plan = planOf(events);
    if (!plan) return this.forget(batchId);
    const { run } = await this.parts.compute("run.replay", batchForWorker(plan, events));
    const advice = await this.advise(run);
    const known = this.batches.value.get(batchId);
    const pending = this.dirty.has(batchId);
    const batch: Batch = { batchId, plan: renamed(plan, run), events, run, advice, pending, failure: null };
    // One that was closed before this session is a record, not a running batch.
    if (known || run.closed_at_ms === null) this.put(batch);
    else if (plan.series) this.seriesBefore.value = new Map(this.seriesBefore.value).set(batchId, batch);
    await this.parts.store.batches.put(rowOf(batch, this.parts.engineVersion()));
  }

  private async advise(run: Run): Promise<Advice> {
    const at_ms = this.parts.phoneNow() + this.parts.offsetMs();
    return this.parts.compute("run.advise", { run, at_ms });
  }

  /** Nothing opens it any more: its opening turned out to lie too far ahead. */
  private async forget(batchId: string): Promise<void> {
    const known = new Map(this.batches.value);
    if (!known.delete(batchId)) return;
    this.batches.value = known;
    await this.parts.store.batches.forget(batchId);
  }

  private put(batch: Batch): void {
    this.batches.value = new Map(this.batches.value).set(batch.batchId, batch);
  }

  private async fromRow(row: BatchRow): Promise<Batch> {
    const events = await this.parts.store.events.eventsOf(batchStream(row.batch_id));
    const { count, last_id } = row.folded;
    const pending = events.length !== count || (events.at(-1)?.id ?? null) !== last_id;
    return { batchId: row.batch_id, plan: row.plan, events, run: row.run, advice: row.advice, pending, failure: null };
  }
}

/** A plan by the name that its batch has now. */
export function renamed<P extends PlanDocument>(plan: P, { name }: Run): P {
  return name && name !== plan.name ? { ...plan, name } : plan;
}

/** The plan a batch was opened with; null while its opening has not reached this phone. */
export function planOf(events: BenchEvent[]): PlanDocument | null {
  return events.find(isOfKind("batch_opened"))?.body.plan ?? null;
}

/** When a batch was opened (ms, corrected); 0 before anything of it is known. */
export function openedMs([first]: BenchEvent[]): number {
  return first ? correctedMs(first) : 0;
}

/** Whether it runs and hands are at work on it. */
export function isAtHand(batch: Batch): boolean {
  return isOpen(batch) && !traitsOf(batch.plan.kind).standsAlone;
}

/** Whether a batch still runs, as far as the phone knows. */
export function isOpen({ run }: Batch): boolean {
  return run?.closed_at_ms == null;
}

function rowOf(batch: Batch, engine_version: string | null): BatchRow {
  const { batchId, plan, run, advice, events } = batch;
  return {
    batch_id: batchId,
    plan,
    run,
    advice,
    folded: { count: events.length, last_id: events.at(-1)?.id ?? null, engine_version },
    opened_at_ms: openedMs(events),
    closed_at_ms: run?.closed_at_ms ?? null,
  };
}
