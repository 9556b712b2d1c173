/** The real engine in a test's own process: the same MicroPython and the very bytes that the worker fetches. */
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import { readFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";

import type { Compute } from "../state/types";
import { faultOf } from "../engine/fault";
import { loadEngine } from "../engine/loadEngine";
import { unwrapped } from "../engine/answer";
import { EngineFailure } from "../problems";

let run: ((code: string) => void) | null = null;

/** Starts one; all that a test calls go to the one started last, for MicroPython keeps itself in a global. */
export async function realEngine(): Promise<Compute> {
  const wasm = import.meta.resolve("@micropython/micropython-webassembly-pyscript/micropython.wasm");
  const packed = `${import.meta.dirname}/../../packed`;
  const compiled = readFile(`${packed}/engine.mpy`);
  const { callText, add, python } = await loadEngine((options) => loadMicroPython({ ...options, url: fileURLToPath(wasm) }), compiled);
  add(await readFile(`${packed}/place-shared.mpy`));
  run = (code) => python.runPython(code);
  return async (name, request) => {
    let text: string;
    try {
      text = callText(name, JSON.stringify(request));
    } catch (error) {
      const fault = faultOf(error);
      throw new EngineFailure(fault.trace, fault);
    }
    return unwrapped<typeof name>(name, text);
  };
}

/** Runs Python beside the engine, to plant a mistake of ours in it and to mend it. */
export function inEngine(code: string): void {
  if (!run) throw new Error("no engine was started");
  run(code);
}
