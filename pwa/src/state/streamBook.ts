import type { Signal } from "@preact/signals";

import type { BenchEvent, FunctionName, Replies, Requests, Values } from "../documents";
import { isOfKind, takenBack } from "../order";
import { type Photo, type Store, uuid7 } from "../storage";
import { parseStreamId, type Stream, streamOf } from "../streams";
import { byWhom } from "./shop";
import type { Compute } from "./types";

interface StreamParts {
  store: Store;
  /** The engine at the desk. */
  compute: Compute;
  /** The phone's clock and its error (ms). */
  phoneNow: () => number;
  offsetMs: () => number;
  shopId: () => string;
  /** Something was written to the log. */
  wrote: (stream: string) => void;
}

/** What happened, to be written. */
export interface Fact {
  kind: string;
  body: Values;
}

type Fold = Extract<FunctionName, "lot.fold" | "order.fold" | "pack.fold">;

/** The documents of one kind of stream (lots, orders, boxes packed), each the fold of its events on this phone. Nothing is folded
 * before somebody asks for them. */
export class StreamBook<D> {
  private loading: Promise<void> | null = null;
  private last: Promise<void> = Promise.resolve();

  constructor(
    private readonly parts: StreamParts,
    private readonly kind: "lot" | "order" | "pack",
    private readonly documents: Signal<Map<string, D>>,
  ) {}

  /** Folds all there are, once. */
  load(): Promise<void> {
    return (this.loading ??= this.loadAll());
  }

  /** Writes what happened in a stream, all or nothing; resolves when it is on the disk and in the document. */
  async write(id: string, facts: Fact[]): Promise<void> {
    await this.parts.store.events.appendAll(facts.map((fact) => this.draft(id, fact)));
    this.parts.wrote(this.stream(id));
    await this.refresh(id);
  }

  /** The same of one fact and the picture it tells of. */
  async writePhoto(id: string, fact: Fact, photo: Photo): Promise<BenchEvent> {
    const event = await this.parts.store.events.appendPhoto(this.draft(id, fact), photo);
    this.parts.wrote(this.stream(id));
    await this.refresh(id);
    return event;
  }

  /** Folds a stream again, after those that wait. Never rejects. */
  refresh(id: string): Promise<void> {
    if (!this.loading) return Promise.resolve();
    return this.next(async () => this.fold(id, await this.parts.store.events.eventsOf(this.stream(id))));
  }

  events(id: string): Promise<BenchEvent[]> {
    return this.parts.store.events.eventsOf(this.stream(id));
  }

  private stream(id: string): Stream {
    return `${this.kind}/${id}`;
  }

  private draft(id: string, { kind, body }: Fact) {
    const { phoneNow, offsetMs, shopId } = this.parts;
    const at_ms = phoneNow();
    return { id: uuid7(at_ms), shop_id: shopId(), stream: this.stream(id), kind, body: byWhom(body), at_ms, offset_ms: offsetMs() };
  }

  private loadAll(): Promise<void> {
    return this.next(async () => {
      const byId = new Map<string, BenchEvent[]>();
      for (const event of await this.parts.store.events.eventsOfStreams(this.kind)) {
        const { id } = parseStreamId(streamOf(event));
        byId.set(id, [...(byId.get(id) ?? []), event]);
      }
      for (const [id, events] of byId) await this.fold(id, events);
    });
  }

  private next(work: () => Promise<void>): Promise<void> {
    this.last = this.last.then(work).catch((error: unknown) => console.error(this.kind, "cannot be folded:", error));
    return this.last;
  }

  /** Nothing was told of it, or all of that was taken back. */
  private forget(id: string): void {
    const known = new Map(this.documents.value);
    if (known.delete(id)) this.documents.value = known;
  }

  private async fold(id: string, events: BenchEvent[]): Promise<void> {
    const back = takenBack(events);
    const counting = events.filter((event) => !isOfKind("undone")(event) && !isOfKind("redone")(event) && !back.has(event.id));
    if (counting.length === 0) return this.forget(id);
    const name: Fold = `${this.kind}.fold`;
    const { document } = (await this.parts.compute(name, { id, events } as Requests[Fold])) as Replies[Fold];
    this.documents.value = new Map(this.documents.value).set(id, document as D);
  }
}
