/** One engine: MicroPython with the server's own engine, compiled. Answers calls in the order they come. */
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import wasm from "@micropython/micropython-webassembly-pyscript/micropython.wasm?url";

import engine from "../../packed/engine.mpy?url";
import { faultOf } from "./fault";
import { type CallText, loadEngine } from "./loadEngine";
import type { Answer, Call } from "./messages";

declare const self: DedicatedWorkerGlobalScope;

function post(answer: Answer): void {
  self.postMessage(answer);
}

async function compiled(): Promise<Uint8Array> {
  const response = await fetch(engine);
  if (!response.ok) throw new Error(`${engine}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

async function startPython(): Promise<CallText> {
  const { version, callText, python } = await loadEngine((options) => loadMicroPython({ ...options, url: wasm }), compiled());
  // Within reach of `make measure`, which times the engine beside a plain loop in this very MicroPython.
  Object.assign(self, { amberbenchPython: python });
  post({ ready: version });
  return callText;
}

const booted = startPython();
booted.catch((error: unknown) => post({ unready: String(error) }));

self.onmessage = async ({ data }: MessageEvent<Call>) => {
  const { id, name, text } = data;
  let callText: CallText;
  try {
    callText = await booted;
  } catch {
    return; // said once already, by `unready`
  }
  try {
    post({ id, text: callText(name, text) });
  } catch (error) {
    post({ id, fault: faultOf(error) });
  }
};
