/** What a kind of batch draws, wherever the app shows it: read by the screens alone. */
import type { ComponentChildren, ComponentType } from "preact";

import type { Advice, BenchEvent, ShopList, Shop, Summary } from "../documents";
import type { BatchRecord, ShopRow } from "../state";
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

/** Every member is optional; a missing one means the product does not have that feature. */
export interface Views<K extends Kind> {
  /** The screen of its form. */
  Form?: ComponentType;
  /** Its picture at the bench. */
  Picture?: ComponentType<PictureProps<K>>;
  /** Whether the picture belongs to a step; without one its words may stand large. */
  hasPicture?(step: string): boolean;
  /** What stands large over the bench when its picture is tapped. */
  Map?: ComponentType<{ plan: PlanOf<K>; onClose: () => void }>;
  /** The cards of its record: planned beside happened, and pictures. */
  Cards?: ComponentType<{ record: RecordOf<K> }>;
  /** The same on a printed page. */
  Paper?: ComponentType<{ record: RecordOf<K> }>;
  /** A sheet to run it without a phone, and its own boxes where that is typed back. */
  Sheet?: ComponentType<{ plan: PlanOf<K> }>;
  boxes?(plan: PlanOf<K>): SheetBoxes;
  /** What came of a closed batch, in a line; missing: pieces, or uncounted. */
  outcome?(summary: Summary): string;
  /** What it offers on the page of a row of the shop. */
  onRow?: { list: ShopList; Tool: ComponentType<{ row: ShopRow; shop: Shop }> };
}
