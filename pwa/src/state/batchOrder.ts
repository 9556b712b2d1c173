import type { BatchOrderReply, BatchOrderRequest } from "../engine/types";
import type { Values } from "../documents";
import { traitsOf } from "../products/traitRegistry";
import { isOpen, openedMs } from "./batchBook";
import type { Batch, Compute } from "./types";

/** A clock that rings within this goes before the order of the day (ms). Assumed: time to walk over and to wash. */
const SOON_MS = 5 * 60_000;

type Row = BatchOrderRequest["batches"][number];

/** Whether a batch is a bowl of chocolate that is dipped from now. */
export function isBowlInUse({ plan, run }: Batch): boolean {
  return Boolean(traitsOf(plan.kind).lendsChocolate && run?.done["temper_check"] && !run.done["use"]);
}

interface OrderParts {
  compute: Compute;
  /** Corrected time (ms). */
  clock: () => number;
  batches: () => Batch[];
  /** Whether this phone holds the batch: it writes only to the logs of batches it holds. */
  isMine: (batch: Batch) => boolean;
  write: (batchId: string, kind: string, body: Values) => Promise<unknown>;
  /** Takes in what was answered. */
  answered: (reply: BatchOrderReply) => void;
}

/** The batches that share one bench: their order, and what must be washed off before one of them goes on, which is
 * written into that one's log. The engine says what; a batch never looks into another's log. */
export class BatchOrder {
  private asked = "";
  private reply: BatchOrderReply | null = null;
  private running: Promise<void> = Promise.resolve();

  constructor(private readonly parts: OrderParts) {}

  /** Asks again if anything of the day has changed, and writes what is new. Never rejects. */
  check(): Promise<void> {
    this.running = this.running.then(() => this.ask()).catch((error: unknown) => console.warn("no order of the day:", error));
    return this.running;
  }

  /** The bowls of chocolate in use, for the log of a batch that is dipped beside them. */
  bowlsInUse(): Values[] {
    return this.parts
      .batches()
      .filter(isBowlInUse)
      .map(({ plan, run }) => ({ name: plan.name, lot: run?.lot ?? plan.lot }));
  }

  private async ask(): Promise<void> {
    const rows = this.rows();
    const asked = JSON.stringify(rows);
    if (asked !== this.asked || !this.reply) {
      // Another phone's clock may be ahead.
      const instants = rows.flatMap((row) => [row.since_ms, row.touched_ms, row.washed_ms, row.answered_ms]);
      const at_ms = Math.max(this.parts.clock(), ...instants.map((one) => one ?? 0));
      this.reply = await this.parts.compute("batch.order", { at_ms, batches: rows });
      this.asked = asked;
      this.parts.answered(this.reply);
    }
    for (const now of this.reply.now) {
      // Somebody tapped meanwhile: this answer is out of date, and the next check asks again.
      if (JSON.stringify(this.rows()) !== this.asked) return;
      await this.recordWash(now);
    }
  }

  private rows(): Row[] {
    return this.parts
      .batches()
      .filter((batch) => batch.run !== null)
      .map((batch) => dayRow(batch, this.parts.clock()));
  }

  private async recordWash(now: BatchOrderReply["now"][number]): Promise<void> {
    const batch = this.parts.batches().find((one) => one.batchId === now.id);
    const known = batch?.run?.wash?.wanted?.allergens ?? [];
    if (!batch || batch.pending || !this.parts.isMine(batch) || known.join() === now.wash.join()) return;
    const body = { wanted: now.wash.length > 0, after: now.after.map((one) => one.name), allergens: now.wash, until_ms: now.until_ms };
    await this.parts.write(batch.batchId, "wash_told", body);
  }
}

/** A batch as batch.order is asked about it. */
function dayRow(batch: Batch, now: number): Row {
  const { batchId, plan, run, events, advice } = batch;
  const under = traitsOf(plan.kind).under?.(plan) ?? [];
  return {
    id: batchId,
    kind: plan.kind,
    name: plan.name,
    // What was not washed off before it lies on the bench with it from then on.
    contains: [...(plan.contains ?? []), ...(run?.may_contain ?? [])],
    labels_known: (plan.labels_known ?? false) && !under.includes(null),
    coated: plan.coated ?? false,
    under: under.filter((one) => one !== null),
    state: isOpen(batch) ? "open" : "closed",
    soon: (advice?.clocks[0]?.due_ms ?? Infinity) - now <= SOON_MS,
    hot: advice?.hot ?? false,
    since_ms: run?.closed_at_ms ?? openedMs(events),
    touched_ms: run?.touched_ms ?? null,
    washed_ms: run?.wash?.washed_ms ?? null,
    answered_ms: run?.wash?.answered_ms ?? null,
  } as Row;
}
