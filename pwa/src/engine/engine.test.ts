// @vitest-environment node
import { expect, test } from "vitest";

import { EngineFailure, EngineProblem } from "../problems";
import { realEngine } from "../testing/engine";
import { WorkerQueue, type EnginePort } from "./workerQueue";
import type { Answer, Call } from "./messages";

test("the server's own files answer under MicroPython", async () => {
  const compute = await realEngine();
  // 2.5 lb: exact by definition (NIST SP 811, B.8).
  const { value } = await compute("units.convert", { value: 2.5, from: "lb", to: "kg" });
  expect(value).toBeCloseTo(1.133980925, 12);
});

test("a request that makes no sense is a problem that names field and range", async () => {
  const compute = await realEngine();
  const failed = compute("materials.properties", { material: "caramel", temp_c: 800 });
  await expect(failed).rejects.toThrow(EngineProblem);
  await expect(failed).rejects.toMatchObject({ problem: { field: "temp_c", code: "too_high", high: 150 } });
});

/** A worker that does what the test says. */
class Port implements EnginePort {
  onmessage: ((event: MessageEvent<Answer>) => void) | null = null;
  onerror: ((event: ErrorEvent) => void) | null = null;
  calls: Call[] = [];
  ended = false;
  postMessage(call: Call): void {
    this.calls.push(call);
  }
  terminate(): void {
    this.ended = true;
  }
  answer(text: string): void {
    const id = this.calls.at(-1)!.id;
    this.onmessage?.({ data: { id, text } } as MessageEvent<Answer>);
  }
  crash(): void {
    this.onerror?.({ message: "out of memory" } as ErrorEvent);
  }
}

function queue() {
  const ports: Port[] = [];
  const made = new WorkerQueue(() => {
    const port = new Port();
    ports.push(port);
    return port;
  });
  return { queue: made, ports };
}

test("calls are sent one at a time, in order, and answered in order", async () => {
  const { queue: one, ports } = queue();
  const [first, second] = [one.call("f", "1"), one.call("f", "2")];
  expect(ports[0]!.calls.map((call) => call.text)).toEqual(["1"]);
  ports[0]!.answer("a");
  expect(await first).toBe("a");
  ports[0]!.answer("b");
  expect(await second).toBe("b");
});

test("a plan that is being typed overtakes those that wait, not the one at work", async () => {
  const { queue: one, ports } = queue();
  const calls = ["1", "2", "3"].map((text) => one.call("slab.plan", text, "slab.plan"));
  ports[0]!.answer("a");
  ports[0]!.answer("c");
  expect(await Promise.all(calls)).toEqual(["a", null, "c"]);
  expect(ports[0]!.calls.map((call) => call.text)).toEqual(["1", "3"]);
});

test("after a crash the call at hand fails and the next goes to a fresh worker", async () => {
  const { queue: one, ports } = queue();
  const [lost, kept] = [one.call("f", "1"), one.call("f", "2")];
  ports[0]!.crash();
  await expect(lost).rejects.toThrow(EngineFailure);
  expect(ports[0]!.ended).toBe(true);
  ports[1]!.answer("b");
  expect(await kept).toBe("b");
});

test("a worker that never starts fails every call instead of hanging", async () => {
  const { queue: one, ports } = queue();
  const calls = Array.from({ length: 8 }, (_, n) => one.call("f", String(n)).catch((error: unknown) => error));
  while (ports.some((port) => !port.ended)) ports.find((port) => !port.ended)!.crash();
  for (const outcome of await Promise.all(calls)) expect(outcome).toBeInstanceOf(EngineFailure);
});
