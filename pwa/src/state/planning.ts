import type { ChocolatePlanReply, ClusterPlanReply, ClusterPlanRequest, SlabPlanRequest } from "../documents";
import type { ChocolatePlanRequest } from "../engine/types";
import { computeLatest } from "../engine/client";
import { EngineProblem } from "../problems";
import { httpApi } from "../sync/api";
import { type PlanParts, withMeasured } from "./learning";
import { sync } from "./syncing";
import type { SlabAnswer } from "./types";

/** The server has so long to answer before the phone computes itself (ms). */
const SERVER_MS = 1_500;

let latest = 0;

/** slab.plan with what the shop has measured, by the server when it answers in time, else here, with the same numbers.
 * null: a later call has overtaken this one. Throws EngineProblem, EngineFailure. */
export async function planSlab(typed: SlabPlanRequest, parts: PlanParts): Promise<SlabAnswer | null> {
  const turn = ++latest;
  const overtaken = () => turn !== latest;
  const request = await withMeasured("slab.plan", typed, parts);
  if (request === null || overtaken()) return null;
  if (sync.value.reachable !== false) {
    try {
      const reply = await httpApi.planSlab(request, SERVER_MS);
      return overtaken() ? null : { request, reply, by: "server" };
    } catch (error) {
      if (error instanceof EngineProblem) {
        if (overtaken()) return null;
        throw error;
      }
      // Not reachable, or it would not: the phone has the same engine.
    }
  }
  if (overtaken()) return null;
  const reply = await computeLatest("slab.plan", request);
  return reply === null || overtaken() ? null : { request, reply, by: "phone" };
}

export interface BowlAnswer {
  request: ChocolatePlanRequest;
  reply: ChocolatePlanReply;
}

/** chocolate.plan, here: it takes no time and nothing measured goes into it.
 * null: a later call has overtaken this one. Throws EngineProblem, EngineFailure. */
export async function planBowl(request: ChocolatePlanRequest): Promise<BowlAnswer | null> {
  const reply = await computeLatest("chocolate.plan", request);
  return reply && { request, reply };
}

export interface ClusterAnswer {
  request: ClusterPlanRequest;
  reply: ClusterPlanReply;
}

/** cluster.plan with what the shop has measured, here: the phone has the same engine.
 * null: a later call has overtaken this one. Throws EngineProblem, EngineFailure. */
export async function planClusters(typed: ClusterPlanRequest, parts: PlanParts): Promise<ClusterAnswer | null> {
  const request = await withMeasured("cluster.plan", typed, parts);
  const reply = request && (await computeLatest("cluster.plan", request));
  return reply && { request, reply };
}
