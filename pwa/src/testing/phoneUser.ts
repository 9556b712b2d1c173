/** One phone and the person who uses it: the real store, outbox, book, taps and exchange, a clock that may be wrong. */
import type { Action, BenchEvent, Entry, PlanDocument, TextEntry, Values } from "../documents";
import { BatchBook } from "../state/batchBook";
import { refreshStreams } from "../state/streamFolders";
import { heldByOtherDevice } from "../state/heldByOtherDevice";
import { TapRecorder } from "../state/tapRecorder";
import type { Batch, Compute } from "../state/types";
import { openStore, type Store, uuid7 } from "../storage";
import { httpApi, Refusal, Unreachable } from "../sync/api";
import { Exchange } from "../sync/exchange";
import { OffsetFilter } from "../sync/offset";
import type { Chance } from "./chance";
import type { Network } from "./network";

export interface StorySetup {
  network: Network;
  chance: Chance;
  compute: Compute;
  /** Everything anybody has written, by id. */
  written: Map<string, BenchEvent>;
}

interface Tapped {
  kind: string;
  body: Values;
}

export class PhoneUser {
  store!: Store;
  book!: BatchBook;
  /** The phone's clock against the true one (ms). */
  errorMs = 0;
  private taps!: TapRecorder;
  private exchange!: Exchange;
  private filter = new OffsetFilter();
  private offsetMs = 0;

  constructor(
    private readonly setup: StorySetup,
    private readonly name: string,
  ) {}

  /** Opens the app, for the first time or after it was killed: what is not on the disk is gone. */
  async opens(): Promise<void> {
    const { compute } = this.setup;
    this.store = await openStore(this.clock(), this.name);
    const write = async (batchId: string, kind: string, body: Values) => {
      const event = await this.book.write(batchId, kind, body);
      this.setup.written.set(event.id, event);
      await this.book.refresh(batchId);
    };
    this.book = new BatchBook({ store: this.store, compute, phoneNow: () => this.clock(), offsetMs: () => this.offsetMs,
      shopId: () => "demo-shop", engineVersion: () => "test", wrote: () => {} });
    this.taps = new TapRecorder({ clock: () => this.clock() + this.offsetMs, batch: (id) => this.book.batches.value.get(id), write,
      silence: () => false, armedAt: () => -Infinity });
    this.exchange = new Exchange(this.store, httpApi, this.filter, () => this.clock());
    for (const batchId of await this.book.load()) await this.book.refresh(batchId);
  }

  private clock(): number {
    return this.setup.network.nowMs + this.errorMs;
  }

  /** Takes the newest estimate of its clock's error, as the app does while nothing runs. */
  setsItsClock(): void {
    this.offsetMs = this.filter.offsetMs ?? this.offsetMs;
  }

  /** One exchange with the server; false when it broke off. */
  async exchanges(): Promise<boolean> {
    try {
      const { touched } = await this.exchange.run();
      await refreshStreams({ batch: this.book }, touched);
      return true;
    } catch (error) {
      if (error instanceof Unreachable || error instanceof Refusal) return false;
      throw error;
    }
  }

  async plans(plan: PlanDocument): Promise<string> {
    const batchId = uuid7(this.clock());
    await this.does(batchId, "batch_opened", { plan, engine_version: "proof" });
    return batchId;
  }

  batch(batchId: string): Batch | undefined {
    return this.book.batches.value.get(batchId);
  }

  hasIt(batchId: string): boolean {
    const batch = this.batch(batchId);
    return batch !== undefined && !heldByOtherDevice(batch, this.store.deviceId);
  }

  /** Writes what a button says; the id of the event, or null where the tap did not count. */
  async does(batchId: string, kind: string, body: Values): Promise<string | null> {
    const before = this.setup.written.size;
    const tap = kind === "undone" ? await this.taps.undo(batchId) : await this.taps.record(batchId, kind, body);
    if (tap !== "written") return null;
    if (this.setup.written.size !== before + 1) throw new Error("a tap is one event");
    return [...this.setup.written.keys()].at(-1) ?? null;
  }

  /** One of the buttons that this phone shows now, and what it would write. */
  async sees(batchId: string): Promise<Tapped | null> {
    const { buttons, entries } = await this.offered(batchId);
    const all = [...buttons, ...buttons, ...entries.map((entry) => this.typed(entry))];
    return all.length > 0 ? this.setup.chance.oneOf(all) : null;
  }

  /** The same button as on another phone, as this one has it; null when it shows none. */
  async seesAlso(batchId: string, { kind, body }: Tapped): Promise<Tapped | null> {
    const { buttons, entries } = await this.offered(batchId);
    const entry = entries.find((one) => one.kind === kind);
    if (entry) return { kind, body: { ...entry.body, [entry.field]: body[entry.field] } };
    return buttons.find((one) => one.kind === kind && ["free", "firm", "step"].every((name) => one.body[name] === body[name])) ?? null;
  }

  private async offered(batchId: string): Promise<{ buttons: Tapped[]; entries: (Entry | TextEntry)[] }> {
    await this.book.look(batchId);
    const advice = this.batch(batchId)?.advice;
    if (!advice) return { buttons: [], entries: [] };
    const actions: Action[] = [...(advice.action ? [advice.action] : []), ...advice.choices];
    return {
      buttons: actions.flatMap((one) => (one.entry ? [] : [{ kind: one.kind, body: one.body }])),
      entries: [...(advice.entry ? [advice.entry] : []), ...actions.flatMap((one) => one.entry ?? [])],
    };
  }

  /** A figure that may well be typed. */
  private typed(entry: Entry | TextEntry): Tapped {
    const { chance } = this.setup;
    if (entry.low === null) return { kind: entry.kind, body: { ...entry.body, [entry.field]: chance.oneOf(["117", "A-9"]) } };
    const low = entry.likely_low ?? entry.band_low ?? entry.low;
    const high = entry.likely_high ?? entry.band_high ?? entry.high;
    return { kind: entry.kind, body: { ...entry.body, [entry.field]: Math.round(chance.between(low, high) * 10) / 10 } };
  }
}
