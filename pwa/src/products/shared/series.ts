/** Batches that were planned together: which one a plan is, and the plan of the one after it. */
import type { ClusterPlan, PlanDocument, Requests, Series, SlabPlan, SlabPlanReply, Values } from "../../documents";
import type { PlanParts, SeriesMember } from "../../state";
import { t } from "../../text";
import type { Traits } from "../kindTraits";
import { traitsOf } from "../traitRegistry";

type PlannedBy = NonNullable<Traits<"slab">["plannedBy"]>;
export type SeriesReply = Pick<SlabPlanReply, "together"> & { batches: { count: number; asked: object }[] };

/** What each batch of a plan is asked with, in order. */
function askedOf({ batches: groups }: SeriesReply): Values[] {
  return groups.flatMap(({ count, asked }) => Array.from({ length: count }, () => asked as Values));
}

/** The name and the place of a plan that is the first of several batches; of a single one the name alone. */
export function asFirst(name: string, reply: SeriesReply): { name: string; series?: Series } {
  const [, ...next] = askedOf(reply);
  const of = next.length + 1;
  return of > 1 ? { name: t("desk.batch_name", { name, number: 1, of }), series: { first: null, number: 1, of, next } } : { name };
}

/** Whether another batch is still to follow this one of several; until it is begun, or was taken off. */
export function hasNext({ batchId, plan: { series } }: SeriesMember, all: SeriesMember[]): boolean {
  if (!series?.next.length) return false;
  const first = series.first ?? batchId;
  return !all.some(({ plan }) => plan.series?.first === first && plan.series.number === series.number + 1);
}

/** What the batch that follows is asked with, and of which function; null where none follows. */
export function nextRequest({ plan }: SeriesMember): { name: PlannedBy; request: Requests[PlannedBy]; parts: PlanParts } | null {
  const asked = plan.series?.next[0];
  const name = traitsOf(plan.kind).plannedBy;
  if (!asked || !name) return null;
  const { oven_id = null, base_id = null, product_id = null, caramel_id = null, request } = plan as SlabPlan | ClusterPlan;
  return { name, request: { ...request, ...asked } as Requests[PlannedBy], parts: { oven_id, base_id, product_id, caramel_id } };
}

/** The plan of the batch that follows, of its answer; what the shop has learnt since may make two of it. */
export function asNext({ batchId, plan }: SeriesMember, { request, reply }: { request: Requests[PlannedBy]; reply: SeriesReply }): PlanDocument {
  const { first, number: before, next: planned } = plan.series ?? { first: null, number: 1, next: [] };
  const next = [...askedOf(reply).slice(1), ...planned.slice(1)];
  const number = before + 1;
  const of = number + next.length;
  const name = t("desk.batch_name", { name: plan.name.replace(/ \d+\/\d+$/, ""), number, of });
  return { ...plan, name, request, reply, series: { first: first ?? batchId, number, of, next } } as PlanDocument;
}
