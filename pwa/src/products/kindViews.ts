/** What a kind of batch is given to draw. */
import type { ComponentChildren } from "preact";

import type { Advice, BenchEvent } from "../documents";
import type { BatchRecord } from "../state";
import type { Kind, PlanOf, RunOf } from "./kindTraits";
import type { BoxTools } from "./shared/typedBackForm";

export interface PictureProps<K extends Kind> {
  plan: PlanOf<K>;
  events: BenchEvent[];
  run: RunOf<K>;
  advice: Advice;
  now: number;
  /** Opens the map. */
  onMap: () => void;
}

export type RecordOf<K extends Kind> = Omit<BatchRecord, "plan" | "run"> & { plan: PlanOf<K>; run: RunOf<K> };

/** The boxes of a sheet to be typed back that are a kind's own, by where they stand. */
export interface SheetBoxes {
  weighing?: (tools: BoxTools) => ComponentChildren;
  melting?: (tools: BoxTools) => ComponentChildren;
  after: (tools: BoxTools) => ComponentChildren;
  /** The key of what its pieces are called; missing: pieces. */
  pieces?: string;
  rest?: (tools: BoxTools) => ComponentChildren;
}
