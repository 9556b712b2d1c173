import type { BenchEvent, PlanDocument, SlabPlanReply } from "../documents";

/** A batch as run.replay is asked for it: what only pictures and the desk read of the plan stays behind, for carrying it
 * into the worker would take as long as the fold itself. */
export function batchForWorker(plan: PlanDocument, events: BenchEvent[]): { plan: object; events: object[] } {
  const { request: _request, ...document } = plan;
  return {
    plan: { ...document, reply: replyForWorker(plan) },
    events: events.map(({ id, device_id, seq, at_ms, offset_ms, kind, body }) => {
      return { id, device_id, seq, at_ms, offset_ms, kind, body: kind === "batch_opened" ? {} : body };
    }),
  };
}

function replyForWorker(plan: PlanDocument): object {
  if (plan.kind === "slab") return slabForWorker(plan.reply);
  if (plan.kind !== "cluster") return plan.reply;
  const { positions_m: _positions, melt: _melt, inputs: _inputs, ...reply } = plan.reply;
  return reply;
}

function slabForWorker(slab: SlabPlanReply): object {
  const { melt: _melt, inputs: _inputs, frames: _frames, cool, cut, ...reply } = slab;
  const { curve: _curve, milestones: _milestones, inputs: _coolInputs, ...cooling } = cool;
  const { cuts_along_m: _along, cuts_across_m: _across, ...cutting } = cut;
  return { ...reply, cool: cooling, cut: cutting };
}
