import { EngineFailure } from "../problems";
import { unwrapped } from "./answer";
import { type EnginePort, WorkerQueue, type QueueListener } from "./workerQueue";
import type { FunctionName, Replies, Requests } from "./types";

type QueueName = "bench" | "desk";

const benchListener: QueueListener = {};

function worker(): EnginePort {
  return new Worker(new URL("./worker.ts", import.meta.url), { type: "module", name: "amberbench-engine" });
}

/** Two engines, so that a step at the bench never waits behind a cooling plan. Each starts with its first call. */
const queues: Record<QueueName, WorkerQueue> = { bench: new WorkerQueue(worker, benchListener), desk: new WorkerQueue(worker) };

/** Starts the bench's engine; the listener hears of every start and stop. */
export function startEngine(listener: QueueListener): void {
  Object.assign(benchListener, listener);
  queues.bench.warm();
}

/** One function of the engine's catalogue.
 * Throws EngineProblem when the request makes no sense, EngineFailure when the engine broke. */
export async function compute<N extends FunctionName>(
  name: N,
  request: Requests[N],
  queue: QueueName = "bench",
): Promise<Replies[N]> {
  const text = await queues[queue].call(name, JSON.stringify(request));
  if (text === null) throw new EngineFailure(`${name} was overtaken`);
  return unwrapped<N>(name, text);
}

/** The same in the queue of the desk; resolves to null when a later call of this function overtook it. */
export async function computeLatest<N extends FunctionName>(
  name: N,
  request: Requests[N],
): Promise<Replies[N] | null> {
  const text = await queues.desk.call(name, JSON.stringify(request), name);
  return text === null ? null : unwrapped<N>(name, text);
}
