/** The traits of every kind of batch: one line a kind. */
import { slab } from "./slab/traits";
import { cluster } from "./cluster/traits";
import { chocolate } from "./chocolate/traits";
import { standup } from "./standup/traits";
import type { PlanDocument } from "../documents";
import type { Kind, Traits } from "./kindTraits";

const TRAITS: { [K in Kind]: Traits<K> } = {
  slab,
  cluster,
  chocolate,
  standup,
};

export const KINDS = Object.keys(TRAITS) as Kind[];

/** The traits of a kind. A kind that only a newer version of the app knows has none: it is kept, and shown by its name alone. */
export function traitsOf<K extends Kind>(kind: K): Traits<K> {
  return TRAITS[kind] ?? {};
}

/** Whether a plan can be taken along as a paper sheet. */
export function hasSheet(plan: PlanDocument): boolean {
  return traitsOf(plan.kind).sheet?.fits(plan) ?? false;
}
