import type { FunctionName, Replies, Requests } from "../documents";
import { computeLatest } from "../engine/client";
import { EngineProblem } from "../problems";
import { httpApi } from "../sync/api";
import { sync } from "./syncing";

/** The server has so long to answer before the phone computes itself (ms). */
const SERVER_MS = 1_500;

export interface PlanAnswer<N extends FunctionName> {
  /** As it was asked: with the shop's measured values in it. */
  request: Requests[N];
  reply: Replies[N];
  /** Who computed it. The numbers are the same. */
  by: "server" | "phone";
}

interface How<R> {
  /** Puts into the request what the shop has measured; null: a later call has overtaken it. */
  measured?: (typed: R) => Promise<R | null>;
  /** Its place under /api/plans, where the server is asked first. */
  server?: string;
}

const latest = new Map<FunctionName, number>();

/** A plan with what the shop has measured, by the server when it is asked and answers in time, else here.
 * null: a later call of the function has overtaken this one. Throws EngineProblem, EngineFailure. */
export async function plan<N extends FunctionName>(name: N, typed: Requests[N], { measured, server }: How<Requests[N]> = {}): Promise<PlanAnswer<N> | null> {
  const turn = (latest.get(name) ?? 0) + 1;
  latest.set(name, turn);
  const overtaken = () => turn !== latest.get(name);
  const request = measured ? await measured(typed) : typed;
  if (request === null || overtaken()) return null;
  if (server !== undefined && sync.value.reachable !== false) {
    try {
      const reply = await httpApi.plan<Replies[N]>(server, request, SERVER_MS);
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
  const reply = await computeLatest(name, request);
  return reply === null || overtaken() ? null : { request, reply, by: "phone" };
}
