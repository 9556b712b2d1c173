import { signal } from "@preact/signals";

import type { BenchEvent, Contribution, FunctionName, LearnApplyRequest, Lesson, Measured, PlanRequest, Requests } from "../documents";
import { computeLatest } from "../engine/client";
import { isOfKind } from "../order";
import type { BatchRow, Store } from "../storage";
import { httpApi } from "../sync/api";
import type { Compute } from "./types";

/** What the batches closed last teach, newest first: as the server told, and this phone's own. null: not folded yet. */
export const lessons = signal<Lesson[] | null>(null);
/** What they amount to; null while nothing has been taught. */
export const measured = signal<Measured | null>(null);

const LESSONS = "contributions";

/** The things of the shop a plan uses; null: none. */
export interface PlanParts {
  oven_id: string | null;
  base_id: string | null;
  product_id: string | null;
  caramel_id: string | null;
}

/** A request to a plan with the shop's measured values in place of what is assumed.
 * null: a later call has overtaken this one. Throws EngineProblem, EngineFailure. */
export async function withMeasured<N extends LearnApplyRequest["function"] & FunctionName>(plan: N, request: Requests[N] & PlanRequest, parts: PlanParts): Promise<Requests[N] | null> {
  if (measured.value === null) return request;
  const applied = await computeLatest("learn.apply", { measured: measured.value, request, function: plan, ...parts });
  return applied && (applied.request as Requests[N]);
}

/** Folds what closed batches teach, and asks the server for it when it may have changed. */
export class Learning {
  private stale = true;
  private turn = 0;

  constructor(
    private readonly store: Store,
    /** The engine at the desk. */
    private readonly compute: Compute,
  ) {}

  /** Something about a closed batch may have changed. */
  async noticed(): Promise<void> {
    this.stale = true;
    await this.refold();
  }

  /** The server has answered and has all our facts; `anew`: in another log. Never rejects: what is known stays. */
  async exchanged(anew: boolean): Promise<void> {
    if (!this.stale && !anew) return;
    this.stale = false;
    try {
      await this.store.meta.put(LESSONS, await httpApi.contributions());
    } catch {
      this.stale = true;
      return;
    }
    await this.refold();
  }

  /** Never rejects. */
  async refold(): Promise<void> {
    const turn = ++this.turn;
    try {
      const all = await this.all();
      const batches = all.flatMap(({ contribution }) => contribution ?? []);
      const folded = await this.compute("learn.fold", { batches });
      if (turn !== this.turn) return;
      lessons.value = all;
      measured.value = folded.n > 0 ? folded : null;
    } catch (error) {
      console.error("nothing learnt:", error);
    }
  }

  /** The server's lessons, and in front of them those of batches it has not heard all of. */
  private async all(): Promise<Lesson[]> {
    const { meta, events, batches } = this.store;
    const unsent = await events.unsent();
    const fromServer = ((await meta.get<Lesson[]>(LESSONS)) ?? []).map((lesson) => withUnsent(lesson, unsent));
    const known = new Set(fromServer.map((one) => one.batch_id));
    const ahead = new Set(unsent.map((event) => event.batch_id));
    // A bowl of chocolate melts no caramel: it teaches nothing, here as on the server.
    const rows = (await batches.all()).filter((row) => row.closed_at_ms !== null && row.run?.melt !== null);
    const own: Lesson[] = [];
    for (const row of rows)
      if (!known.has(row.batch_id) || ahead.has(row.batch_id)) own.push(await this.lessonOf(row));
    const mine = new Set(own.map((one) => one.batch_id));
    return [...own, ...fromServer.filter((one) => !mine.has(one.batch_id))].sort((a, b) => b.closed_at_ms - a.closed_at_ms);
  }

  /** As the server makes it (services/contributions.py). */
  private async lessonOf({ batch_id, plan, run, closed_at_ms }: BatchRow): Promise<Lesson> {
    let contribution: Contribution | null = null;
    try {
      if (run) ({ contribution } = await this.compute("learn.contribution", { batch_id, plan, run }));
    } catch (error) {
      console.error("batch teaches nothing:", batch_id, error);
    }
    return { batch_id, name: plan.name, closed_at_ms: closed_at_ms ?? 0, reason: run?.left_out ?? null, contribution };
  }
}

/** With what was said of it since on this phone, which has none of its other events. */
function withUnsent(lesson: Lesson, unsent: BenchEvent[]): Lesson {
  const last = unsent.filter(isOfKind("left_out")).filter((event) => event.batch_id === lesson.batch_id).at(-1);
  if (!last) return lesson;
  const { left_out } = last.body;
  const reason = left_out ? (last.body.reason ?? "") : null;
  return { ...lesson, reason, contribution: lesson.contribution && { ...lesson.contribution, left_out } };
}
