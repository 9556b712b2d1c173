import type { BenchEvent, PlanDocument, PlanTaken, RunReplayRequest, SlabPlanReply, SlabPlanTaken } from "../documents";

/** A batch as run.replay is asked for it: what only pictures and the desk read of the plan stays behind, for carrying it
 * into the worker would take as long as the fold itself. */
export function batchForWorker(plan: PlanDocument, events: BenchEvent[]): RunReplayRequest {
  return {
    plan: planForWorker(plan),
    events: events.map(({ id, device_id, seq, at_ms, offset_ms, kind, body }) => {
      return { id, device_id, seq, at_ms, offset_ms, kind, body: kind === "batch_opened" ? {} : body };
    }),
  };
}

function planForWorker({ request: _request, ...plan }: PlanDocument): PlanTaken {
  if (plan.kind === "slab") return { ...plan, reply: slabForWorker(plan.reply) };
  if (plan.kind !== "cluster") return plan;
  const { positions_m: _positions, melt: _melt, inputs: _inputs, ...reply } = plan.reply;
  return { ...plan, reply };
}

function slabForWorker(slab: SlabPlanReply): SlabPlanTaken["reply"] {
  const { melt: _melt, inputs: _inputs, frames: _frames, cool, cut, ...reply } = slab;
  const { curve: _curve, milestones: _milestones, inputs: _coolInputs, ...cooling } = cool;
  const { cuts_along_m: _along, cuts_across_m: _across, ...cutting } = cut;
  return { ...reply, cool: cooling, cut: cutting };
}
