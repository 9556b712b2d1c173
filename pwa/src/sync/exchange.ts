import type { BenchEvent, Health, PushAnswer, Shop, Summary } from "../documents";
import type { Store } from "../storage";
import { streamOf } from "../streams";
import { type Api, Refusal, Unreachable } from "./api";
import { OffsetFilter, sample } from "./offset";

/** Small groups: an answer that is lost on the way costs little to ask again. */
export const GROUP = 100;
/** A group stays well below what the server reads at once (characters of JSON). */
const GROUP_TEXT = 500_000;

/** The server answered out of another log than a moment ago: the next exchange begins with that one. */
class LogChanged extends Unreachable {}

/** What an exchange brought to the phone. */
export interface ExchangeResult {
  health: Health;
  /** The server's log is another one than this phone had met, or lacks what it had seen: all was offered again. */
  anotherLog: boolean;
  shop: Shop | null;
  summaries: Summary[] | null;
  /** Streams with events this phone did not have, or whose refused events changed. */
  touched: Set<string>;
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
    const anotherLog = await this.store.syncCursor.recognizeLog(health.log_id, this.correctedNow());
    const result: ExchangeResult = { health, anotherLog, shop: null, summaries: null, touched: new Set() };
    await this.store.events.offerAgain(asker(health));
    try {
      await this.bothWays(result);
    } catch (error) {
      if (result.anotherLog || !(error instanceof Refusal) || error.code !== "other_log") throw error;
      // The log of this name was put back from a copy that lacks what this phone has seen.
      await this.store.syncCursor.resetAndReoffer(health.log_id, this.correctedNow());
      result.anotherLog = true;
      await this.bothWays(result);
    }
    return result;
  }

  /** Sends first: a server that lost its log takes the shop over from its phones before it hands one out. */
  private async bothWays(result: ExchangeResult): Promise<void> {
    // A reader's phone keeps what it recorded until it is paired in another role.
    if (result.health.role !== "reader") await this.push(result);
    if ((await this.store.syncCursor.read()) === null) await this.takeSnapshot(result);
    await this.pull(result);
  }

  private correctedNow(): number {
    return this.clock() + (this.offset.offsetMs ?? 0);
  }

  private async checkHealth(): Promise<Health> {
    const sent = this.clock();
    const health = await this.api.health();
    this.offset.add(sample(sent, health.received_ms, health.sent_ms, this.clock()));
    await this.store.meta.put("backup_ms", health.backup_ms ?? null);
    return health;
  }

  private async takeSnapshot(result: ExchangeResult): Promise<void> {
    const { shop, summaries, ...first } = await this.api.snapshot(0, null);
    checkLog(result, first.log_id);
    if (shop) await this.store.meta.put("shop", shop);
    await this.store.meta.put("summaries", summaries);
    const { cursor, cursor_mark } = first;
    // Page by page; the cursor is kept with the last of them, so that one broken off begins again.
    for (let { events, next } = first; ; ) {
      const at = next == null ? { cursor, cursor_mark } : null;
      for (const one of await this.store.events.mergePulled(events, at)) result.touched.add(one);
      if (next == null) break;
      const page = await this.api.snapshot(next, cursor);
      checkLog(result, page.log_id);
      ({ events, next } = page);
    }
    result.shop = shop;
    result.summaries = summaries;
  }

  private async push(result: ExchangeResult): Promise<void> {
    for (;;) {
      const group = small(await this.store.events.waiting(GROUP));
      if (group.length === 0) return;
      const answers = await this.pushGroup(group, result);
      // An answer for none of them would have us ask for ever.
      const asked = new Set(group.map((event) => event.id));
      const ours = answers.filter(({ id }) => id !== null && asked.has(id));
      if (ours.length === 0) throw new Refusal(200, "no_answers");
      await this.store.meta.put("sent_ms", this.correctedNow());
      await this.store.events.markSent(ours, asker(result.health));
      const refused = new Set(ours.filter((one) => one.result === "refused").map(({ id }) => id));
      for (const event of group) if (refused.has(event.id)) result.touched.add(streamOf(event));
    }
  }

  /** When the server will not read a whole group, the fault is looked for in its halves. */
  private async pushGroup(group: BenchEvent[], result: ExchangeResult): Promise<PushAnswer[]> {
    try {
      const { log_id, answers } = await this.api.push(group);
      checkLog(result, log_id);
      // An answer to an event too broken to have an id stands in its place.
      return answers.map((answer, index) => ({ ...answer, id: answer.id ?? group[index]?.id ?? "" }));
    } catch (error) {
      const first = group[0];
      if (!(error instanceof Refusal) || !first || !FAULTS.includes(error.status)) throw error;
      if (group.length === 1) return [{ id: first.id, result: "refused", code: error.code, field: null, position: null, flags: [] }];
      const half = Math.ceil(group.length / 2);
      return [...(await this.pushGroup(group.slice(0, half), result)), ...(await this.pushGroup(group.slice(half), result))];
    }
  }

  private async pull(result: ExchangeResult): Promise<void> {
    for (;;) {
      const at = (await this.store.syncCursor.read()) ?? { cursor: 0, cursor_mark: null };
      const { log_id, events, cursor, cursor_mark, more } = await this.api.pull(at.cursor, at.cursor_mark);
      checkLog(result, log_id);
      if (cursor !== at.cursor || events.length > 0)
        for (const one of await this.store.events.mergePulled(events, { cursor, cursor_mark })) result.touched.add(one);
      if (!more || cursor <= at.cursor) return;
    }
  }
}

/** Throws when an answer is of another log than the one this exchange began with. */
function checkLog({ health }: ExchangeResult, logId: string): void {
  if (logId !== health.log_id) throw new LogChanged(`${health.log_id} became ${logId}`);
}

/** Who the server took this phone for: what it refused is offered again to another version of it, or in another role. */
function asker({ engine_version, role = "owner" }: Health): string {
  return role === "owner" ? engine_version : `${engine_version} ${role}`;
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
