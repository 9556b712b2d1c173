/** What each kind of batch draws at the bench. It is loaded with the bench: records, forms and the shop have registries of
 * their own, which come with their places. */
import type { ComponentType } from "preact";

import { ClusterPicture, hasPicture as clusterHasPicture } from "./cluster/ClusterPicture";
import type { Kind, PlanOf } from "./kindTraits";
import type { PictureProps } from "./kindViews";
import { SlabMapSheet } from "./slab/SlabMapSheet";
import { hasPicture as slabHasPicture, SlabPicture } from "./slab/SlabPicture";

/** Every member is optional; a missing one means the kind does not have that feature. */
interface BenchViews<K extends Kind> {
  /** Its picture at the bench. */
  Picture?: ComponentType<PictureProps<K>>;
  /** Whether the picture belongs to a step; without one its words may stand large. */
  hasPicture?(step: string): boolean;
  /** What stands large over the bench when its picture is tapped. */
  Map?: ComponentType<{ plan: PlanOf<K>; onClose: () => void }>;
}

const VIEWS: { [K in Kind]: BenchViews<K> } = {
  slab: { hasPicture: slabHasPicture, Picture: SlabPicture, Map: SlabMapSheet },
  cluster: { hasPicture: clusterHasPicture, Picture: ClusterPicture },
  chocolate: {},
  standup: {},
};

/** The bench views of a kind; one that only a newer version of the app knows has its words, no picture. */
export function benchViewsOf<K extends Kind>(kind: K): BenchViews<K> {
  return VIEWS[kind] ?? {};
}
