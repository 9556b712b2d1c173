/** A batch that was run on paper, typed back: the engine makes the events, all of them are written or none. */
import { compute } from "../engine/client";
import type { PaperEventsRequest } from "../engine/types";
import { correctedMs } from "../order";
import { traitsOf } from "../products/traitRegistry";
import type { AppState } from "./app";
import { correctedNow } from "./time";
import type { BatchRecord } from "./types";

export type FilledSheet = Omit<PaperEventsRequest, "after_ms" | "now_ms" | "planned_pieces" | "fill">;

/** Raises EngineProblem, naming the box, for a sheet that cannot be so. */
export async function typeBack({ book, learning }: AppState, { summary, plan, run, events }: BatchRecord, sheet: FilledSheet): Promise<void> {
  const after_ms = Math.max(...events.map(correctedMs));
  const fill = traitsOf(plan.kind).sheet?.fill?.(plan) ?? null;
  const request = { ...sheet, after_ms, now_ms: correctedNow(), planned_pieces: run.planned.pieces, fill };
  const written = await compute("paper.events", request, "desk");
  await book.writeAll(summary.batch_id, run, written.events as { kind: string; at_ms: number; body: Record<string, unknown> }[]);
  await learning.noticed();
}

const draftName = (batchId: string) => `sheet ${batchId}`;

/** A sheet that was begun and not yet kept, as the form left it; null: none. */
export async function sheetDraft({ store }: AppState, batchId: string): Promise<unknown> {
  return (await store.meta.get(draftName(batchId))) ?? null;
}

/** Keeps what is typed so far, so that a reload loses none of it; null: no longer needed. */
export async function keepSheetDraft({ store }: AppState, batchId: string, form: unknown): Promise<void> {
  await store.meta.put(draftName(batchId), form);
}
