/** The real engine in a test's own process: the same MicroPython and the same files as in the worker. */
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import { fileURLToPath } from "node:url";

import type { Compute } from "../state/batchBook";
import { install } from "../engine/install";
import { unwrapped } from "../engine/answer";

export async function realEngine(): Promise<Compute> {
  const wasm = import.meta.resolve("@micropython/micropython-webassembly-pyscript/micropython.wasm");
  const { callText } = await install((options) => loadMicroPython({ ...options, url: fileURLToPath(wasm) }));
  return async (name, request) => unwrapped<typeof name>(name, callText(name, JSON.stringify(request)));
}
