import type { BenchEvent, Shop, Summary } from "../documents";
import type { PushAnswer, Store } from "../storage";
import { type Api, type Health, Refusal } from "./api";
import { OffsetFilter, sample } from "./offset";

/** Small groups: an answer that is lost on the way costs little to ask again. */
export const GROUP = 100;
/** A group stays well below what the server reads at once (characters of JSON). */
const GROUP_TEXT = 500_000;

/** What an exchange brought to the phone. */
export interface ExchangeResult {
  health: Health;
  shop: Shop | null;
  summaries: Summary[] | null;
  /** Batches with events this phone did not have, or whose refused events changed; null: the shop. */
  touched: Set<string | null>;
}

/** One full exchange with the server: health and clock, snapshot the first time, push, pull. Idempotent: whatever
 * breaks off in the middle is simply done again. Throws what the api throws. */
export class Exchange {
  constructor(
    private readonly store: Store,
    private readonly api: Api,
    private readonly offset: OffsetFilter,
    private readonly clock: () => number,
  ) {}

  async run(): Promise<ExchangeResult> {
    const health = await this.checkHealth();
    const result: ExchangeResult = { health, shop: null, summaries: null, touched: new Set() };
    if ((await this.store.meta.get("cursor")) === undefined) await this.takeSnapshot(result);
    await this.store.events.offerAgain(health.engine_version);
    await this.push(health.engine_version, result.touched);
    await this.pull(result.touched);
    return result;
  }

  private async checkHealth(): Promise<Health> {
    const sent = this.clock();
    const health = await this.api.health();
    this.offset.add(sample(sent, health.received_ms, health.sent_ms, this.clock()));
    return health;
  }

  private async takeSnapshot(result: ExchangeResult): Promise<void> {
    const { shop, events, summaries, cursor } = await this.api.snapshot();
    if (shop) await this.store.meta.put("shop", shop);
    await this.store.meta.put("summaries", summaries);
    result.touched = await this.store.events.mergePulled(events, cursor);
    result.shop = shop;
    result.summaries = summaries;
  }

  private async push(engineVersion: string, touched: Set<string | null>): Promise<void> {
    for (;;) {
      const group = small(await this.store.events.waiting(GROUP));
      if (group.length === 0) return;
      const answers = await this.pushGroup(group);
      // An answer for none of them would have us ask for ever.
      const asked = new Set(group.map((event) => event.id));
      const ours = answers.filter(({ id }) => id !== null && asked.has(id));
      if (ours.length === 0) throw new Refusal(200, "no_answers");
      await this.store.events.markSent(ours, engineVersion);
      const refused = new Set(ours.filter(({ result }) => result === "refused").map(({ id }) => id));
      for (const event of group) if (refused.has(event.id)) touched.add(event.batch_id);
    }
  }

  /** When the server will not read a whole group, the fault is looked for in its halves. */
  private async pushGroup(group: BenchEvent[]): Promise<PushAnswer[]> {
    try {
      const answers = await this.api.push(group);
      // An answer to an event too broken to have an id stands in its place.
      return answers.map((answer, index) => ({ ...answer, id: answer.id ?? group[index]?.id ?? "" }));
    } catch (error) {
      const first = group[0];
      if (!(error instanceof Refusal) || !first || !FAULTS.includes(error.status)) throw error;
      if (group.length === 1) return [{ id: first.id, result: "refused", code: error.code }];
      const half = Math.ceil(group.length / 2);
      return [...(await this.pushGroup(group.slice(0, half))), ...(await this.pushGroup(group.slice(half)))];
    }
  }

  private async pull(touched: Set<string | null>): Promise<void> {
    for (;;) {
      const after = Number((await this.store.meta.get("cursor")) ?? 0);
      const { events, cursor, more } = await this.api.pull(after);
      if (cursor !== after || events.length > 0)
        for (const batchId of await this.store.events.mergePulled(events, cursor)) touched.add(batchId);
      if (!more || cursor <= after) return;
    }
  }
}

/** As many of the first events as fit; at least one. */
function small(events: BenchEvent[]): BenchEvent[] {
  let size = 0;
  return events.filter((event, index) => {
    size += JSON.stringify(event).length;
    return index === 0 || size <= GROUP_TEXT;
  });
}

/** Malformed, too large, not acceptable: the event's own fault. Anything else (no access, say) is the phone's trouble. */
const FAULTS = [400, 413, 422];
