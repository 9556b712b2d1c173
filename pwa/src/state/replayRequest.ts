import type { BenchEvent, PlanDocument, RunReplayRequest } from "../documents";
import { traitsOf } from "../products/traitRegistry";

/** A batch as run.replay is asked for it: what only pictures and the desk read of the plan stays behind, for carrying it
 * into the worker would take as long as the fold itself. */
export function batchForWorker(plan: PlanDocument, events: BenchEvent[]): RunReplayRequest {
  const { request: _request, ...taken } = plan;
  return {
    plan: traitsOf(plan.kind).forWorker?.(plan) ?? taken,
    events: events.map(({ id, device_id, seq, at_ms, offset_ms, kind, body }) => {
      return { id, device_id, seq, at_ms, offset_ms, kind, body: kind === "batch_opened" ? {} : body };
    }),
  };
}
