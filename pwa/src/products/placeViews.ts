/** What each kind of batch draws in the places beside the bench: its form, its record, its paper. */
import type { ComponentType } from "preact";

import type { Summary } from "../documents";
import { t } from "../text";
import { ChocolateCards, ChocolateHalves } from "./chocolate/ChocolateRecord";
import { ChocolateScreen } from "./chocolate/ChocolateScreen";
import { ClusterCards, ClusterHalves } from "./cluster/ClusterRecordViews";
import { ClusterScreen } from "./cluster/ClusterScreen";
import { clusterBoxes, ClusterSheet } from "./cluster/ClusterSheet";
import type { Kind, PlanOf } from "./kindTraits";
import type { RecordOf, SheetBoxes } from "./kindViews";
import { SlabCards, SlabHalves } from "./slab/SlabRecordViews";
import { SlabScreen } from "./slab/SlabScreen";
import { slabBoxes, SlabSheet } from "./slab/SlabSheet";
import { StandupCard } from "./standup/StandupCard";

/** Every member is optional; a missing one means the kind does not have that feature. */
interface PlaceViews<K extends Kind> {
  /** The form that plans it; missing: it is begun on another screen. */
  Form?: ComponentType;
  /** The cards of its record: planned beside happened, and pictures. */
  Cards?: ComponentType<{ record: RecordOf<K> }>;
  /** The same on a printed page. */
  Paper?: ComponentType<{ record: RecordOf<K> }>;
  /** A sheet to run it without a phone, and its own boxes where that is typed back. */
  Sheet?: ComponentType<{ plan: PlanOf<K> }>;
  boxes?(plan: PlanOf<K>): SheetBoxes;
  /** What came of a closed batch, in a line; missing: pieces, or uncounted. */
  outcome?(summary: Summary): string;
}

const VIEWS: { [K in Kind]: PlaceViews<K> } = {
  slab: { Form: SlabScreen, Cards: SlabCards, Paper: SlabHalves, Sheet: SlabSheet, boxes: slabBoxes },
  cluster: { Form: ClusterScreen, Cards: ClusterCards, Paper: ClusterHalves, Sheet: ClusterSheet, boxes: clusterBoxes },
  chocolate: { Form: ChocolateScreen, Cards: ChocolateCards, Paper: ChocolateHalves, outcome: ({ caramel_kg }) => t("desk.closed_bowl", { melted_kg: caramel_kg }) },
  standup: { Cards: StandupCard, Paper: StandupCard, outcome: () => t("desk.closed_standup") },
};

/** What the places show of a kind; one that only a newer version of the app knows has its log, no cards. */
export function placeViewsOf<K extends Kind>(kind: K): PlaceViews<K> {
  return VIEWS[kind] ?? {};
}
