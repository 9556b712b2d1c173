/** The facts of every kind of batch: one line a kind. */
import { slab } from "./slab/facts";
import { cluster } from "./cluster/facts";
import { chocolate } from "./chocolate/facts";
import { standup } from "./standup/facts";
import type { PlanDocument } from "../documents";
import type { Facts, Kind } from "./kind";

const FACTS: { [K in Kind]: Facts<K> } = {
  slab,
  cluster,
  chocolate,
  standup,
};

export const KINDS = Object.keys(FACTS) as Kind[];

/** The facts of a kind. One that only a newer version of the app knows is kept and shown by its name, and nothing else. */
export function factsOf<K extends Kind>(kind: K): Facts<K> {
  return FACTS[kind] ?? {};
}

/** Whether a plan can be taken along as a paper sheet. */
export function hasSheet(plan: PlanDocument): boolean {
  return factsOf(plan.kind).sheet?.fits(plan) ?? false;
}
