/** The cooling of what was poured between bars, gathered from plan, events and run. No arithmetic. */
import type { BenchEvent, SlabPlanReply, SlabRun } from "../../documents";
import { isOfKind } from "../../order";
import type { Cooling } from "../../ui/pictures/CoolingCurve";

/** The steps of it. */
export const COOLING = ["cool", "chill", "touch"];

type CoolReply = Pick<SlabPlanReply, "cool">;
type CoolRun = Pick<SlabRun, "cool" | "done">;

/** The curve as planned; `poured_ms` null draws it in hours after pouring. */
export function plannedCooling({ cool }: CoolReply, poured_ms: number | null): Cooling {
  const { curve, milestones, target_c, ready_s, ready_low_s, ready_high_s } = cool;
  const span = { target_c, ready_s, ready_low_s, ready_high_s };
  return { curve, milestones, ...span, readings: [], touches: [], poured_ms, now_s: null };
}

/** The curve of the last refit that the run has taken in, else the planned one; with what was read and felt. */
export function cooledSlab(plan: { reply: CoolReply }, events: BenchEvent[], { cool, done }: CoolRun, now_ms: number | null): Cooling {
  const poured_ms = done["melt"] ?? null;
  const refit = events.filter(isOfKind("cooling_refitted")).filter((one) => one.body.seen === cool.fitted).at(-1);
  const { curve, milestones } = refit?.body.reply ?? plan.reply.cool;
  return {
    ...plannedCooling(plan.reply, poured_ms),
    curve: curve ?? plan.reply.cool.curve,
    milestones: milestones ?? plan.reply.cool.milestones,
    ready_s: cool.ready_s,
    ready_low_s: cool.ready_low_s,
    ready_high_s: cool.ready_high_s,
    readings: cool.readings,
    touches: cool.touches,
    now_s: now_ms === null || poured_ms === null ? null : (now_ms - poured_ms) / 1000,
  };
}
