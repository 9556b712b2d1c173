/** The views of every kind of batch: one line a kind. */
import { slab } from "./slab/views";
import { cluster } from "./cluster/views";
import { chocolate } from "./chocolate/views";
import { standup } from "./standup/views";
import type { Kind } from "./kindTraits";
import type { Views } from "./kindViews";

const VIEWS: { [K in Kind]: Views<K> } = {
  slab,
  cluster,
  chocolate,
  standup,
};

/** The views of a kind; one that only a newer version of the app knows has its words and its log, no picture. */
export function viewsOf<K extends Kind>(kind: K): Views<K> {
  return VIEWS[kind] ?? {};
}
