/** One engine: MicroPython with the server's own engine files. Answers calls in the order they come. */
import { loadMicroPython } from "@micropython/micropython-webassembly-pyscript/micropython.mjs";
import wasm from "@micropython/micropython-webassembly-pyscript/micropython.wasm?url";

import type { Answer, Call } from "./messages";

declare const self: DedicatedWorkerGlobalScope;

const files = import.meta.glob<string>("../../../server/amberbench/engine/*.py", {
  eager: true,
  query: "?raw",
  import: "default",
});
/** Room for the finest cooling grid and a batch of thousands of events (bytes). */
const HEAP = 32 * 1024 * 1024;

const BOOT = `
from amberbench.engine import VERSION
from amberbench.engine.catalogue import call_text
`;

type CallText = (name: string, text: string) => string;

async function boot(): Promise<CallText> {
  const python = await loadMicroPython({ url: wasm, heapsize: HEAP });
  python.FS.mkdir("/amberbench");
  python.FS.mkdir("/amberbench/engine");
  python.FS.writeFile("/amberbench/__init__.py", "");
  for (const [path, text] of Object.entries(files))
    python.FS.writeFile(`/amberbench/engine/${path.split("/").at(-1)}`, text);
  python.runPython(`import sys\nsys.path.insert(0, "/")\n${BOOT}`);
  post({ ready: String(python.globals.get("VERSION")) });
  return python.globals.get("call_text");
}

function post(answer: Answer): void {
  self.postMessage(answer);
}

const booted = boot();
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
    post({ id, failed: String(error) });
  }
};
