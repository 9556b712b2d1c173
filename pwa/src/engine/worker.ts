/** One engine: MicroPython with the server's own engine, compiled. Answers calls in the order they come. */
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import wasm from "@micropython/micropython-webassembly-pyscript/micropython.wasm?url";

import engine from "../../packed/engine.mpy?url";
import desk from "../../packed/place-shared.mpy?url";
import { faultOf } from "./fault";
import { type Engine, loadEngine } from "./loadEngine";
import type { Answer, Call } from "./messages";

declare const self: DedicatedWorkerGlobalScope;

function post(answer: Answer): void {
  self.postMessage(answer);
}

async function compiled(file: string): Promise<Uint8Array> {
  const response = await fetch(file);
  if (!response.ok) throw new Error(`${file}: ${response.status}`);
  return new Uint8Array(await response.arrayBuffer());
}

async function startPython(): Promise<Engine> {
  const started = await loadEngine((options) => loadMicroPython({ ...options, url: wasm }), compiled(engine));
  // Within reach of `make measure`, which times the engine beside a plain loop in this very MicroPython.
  Object.assign(self, { amberbenchPython: started.python });
  post({ ready: started.version });
  return started;
}

const booted = startPython();
booted.catch((error: unknown) => post({ unready: String(error) }));

self.onmessage = async ({ data }: MessageEvent<Call>) => {
  const { id, name, text } = data;
  let started: Engine;
  try {
    started = await booted;
  } catch {
    return; // said once already, by `unready`
  }
  try {
    // What the bench does not need is fetched when it is first asked for.
    if (!started.isKnown(name)) started.add(await compiled(desk));
    post({ id, text: started.callText(name, text) });
  } catch (error) {
    post({ id, fault: faultOf(error) });
  }
};
