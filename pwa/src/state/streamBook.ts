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
  /** Streams that got something new and wait to be folded. */
  private readonly stale = new Set<string>();

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

  /** Folds a stream again, with all others that wait. Never rejects. */
  refresh(id: string): Promise<void> {
    if (!this.loading) return Promise.resolve();
    this.stale.add(id);
    return this.next(() => this.foldStale());
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
      await this.foldAll([...byId]);
    });
  }

  /** Nothing is left of it where another call has folded all that waited. */
  private async foldStale(): Promise<void> {
    const ids = [...this.stale];
    this.stale.clear();
    await this.foldAll(await Promise.all(ids.map(async (id): Promise<[string, BenchEvent[]]> => [id, await this.events(id)])));
  }

  /** Some at a time: each change of the signal draws a list of thousands anew. */
  private async foldAll(streams: [string, BenchEvent[]][]): Promise<void> {
    for (const some of portions(streams, PORTION)) {
      const folded = await Promise.all(some.map(([id, events]) => this.folded(id, events)));
      this.take(some.map(([id], at) => [id, folded[at] ?? null]));
      await new Promise((done) => setTimeout(done));
    }
  }

  private next(work: () => Promise<void>): Promise<void> {
    this.last = this.last.then(work).catch((error: unknown) => console.error(this.kind, "cannot be folded:", error));
    return this.last;
  }

  /** The document; null: nothing was told of it, or all of that was taken back. */
  private async folded(id: string, events: BenchEvent[]): Promise<D | null> {
    const back = takenBack(events);
    const counting = events.some((event) => !isOfKind("undone")(event) && !isOfKind("redone")(event) && !back.has(event.id));
    if (!counting) return null;
    const name: Fold = `${this.kind}.fold`;
    const { document } = (await this.parts.compute(name, { id, events } as Requests[Fold])) as Replies[Fold];
    return document as D;
  }

  private take(found: [string, D | null][]): void {
    const known = new Map(this.documents.value);
    for (const [id, document] of found)
      if (document) known.set(id, document);
      else known.delete(id);
    this.documents.value = known;
  }
}

/** So many documents are shown as soon as they are folded. */
const PORTION = 200;

function portions<T>(all: T[], most: number): T[][] {
  return Array.from({ length: Math.ceil(all.length / most) }, (_, nth) => all.slice(nth * most, (nth + 1) * most));
}
