import { EngineFailure } from "../problems";
import { unwrapped } from "./answer";
import { type EnginePort, Lane, type LaneListener } from "./lane";
import type { Functions } from "./types";

type LaneName = "bench" | "desk";
export type FunctionName = keyof Functions;

const benchListener: LaneListener = {};

function worker(): EnginePort {
  return new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "amberbench-engine" });
}

/** Two engines, so that a step at the bench never waits behind a cooling plan. Each starts with its first call. */
const lanes: Record<LaneName, Lane> = { bench: new Lane(worker, benchListener), desk: new Lane(worker) };

/** Starts the bench's engine; the listener hears of every start and stop. */
export function startEngine(listener: LaneListener): void {
  Object.assign(benchListener, listener);
  lanes.bench.warm();
}

/** One function of the engine's catalogue.
 * Throws EngineProblem when the request makes no sense, EngineFailure when the engine broke. */
export async function compute<N extends FunctionName>(
  name: N,
  request: Functions[N]["request"],
  lane: LaneName = "bench",
): Promise<Functions[N]["reply"]> {
  const text = await lanes[lane].call(name, JSON.stringify(request));
  if (text === null) throw new EngineFailure(`${name} was overtaken`);
  return unwrapped<N>(name, text);
}

/** The same in the desk lane; resolves to null when a later call of this function overtook it. */
export async function computeLatest<N extends FunctionName>(
  name: N,
  request: Functions[N]["request"],
): Promise<Functions[N]["reply"] | null> {
  const text = await lanes.desk.call(name, JSON.stringify(request), name);
  return text === null ? null : unwrapped<N>(name, text);
}
