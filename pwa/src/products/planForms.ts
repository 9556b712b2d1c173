/** The screen of each kind's form; a kind without one is begun on another screen. */
import type { ComponentType } from "preact";

import { ChocolateScreen } from "./chocolate/ChocolateScreen";
import { ClusterScreen } from "./cluster/ClusterScreen";
import type { Kind } from "./kindTraits";
import { SlabScreen } from "./slab/SlabScreen";

export const PLAN_FORMS: { [K in Kind]?: ComponentType } = {
  slab: SlabScreen,
  cluster: ClusterScreen,
  chocolate: ChocolateScreen,
};
