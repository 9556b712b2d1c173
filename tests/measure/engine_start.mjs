// Starts the phone's engine from the bytes that ship and from its sources, in turn:
//   node engine_start.mjs ENGINE.mpy ENGINE_FOLDER MICROPYTHON_FOLDER ROUNDS
// Prints the pairs as JSON, [[shipped, sources], …] (ms), after one round to warm up.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { loadEngine } from "../../pwa/src/engine/loadEngine.ts";

const [compiled, folder, micropython, rounds] = process.argv.slice(2);
const { loadMicroPython } = await import(pathToFileURL(join(micropython, "micropython.mjs")));
const shipped = readFileSync(compiled);
// The version stands in place of the one module that reads files and is not for MicroPython.
const sources = readdirSync(folder, { recursive: true, withFileTypes: true })
  .filter((one) => one.name.endsWith(".py"))
  .map((one) => join(one.parentPath, one.name))
  .map((file) => [file.slice(folder.length), file === join(folder, "version.py") ? 'VERSION = ""' : readFileSync(file)]);
const folders = [...new Set(sources.flatMap(([path]) => path.split("/").slice(0, -1).map((_, n, all) => all.slice(0, n + 1).join("/"))))].sort();

async function fromSources() {
  const python = await loadMicroPython({ heapsize: 4 * 1024 * 1024 });
  python.FS.mkdir("/amberbench");
  python.FS.writeFile("/amberbench/__init__.py", "");
  for (const one of folders) python.FS.mkdir(`/amberbench/engine${one}`);
  for (const [path, text] of sources) python.FS.writeFile(`/amberbench/engine${path}`, text);
  python.runPython('import sys\nsys.path.insert(0, "/")\nfrom amberbench.engine.catalogue import call_text');
}

async function timed(work) {
  const started = performance.now();
  await work();
  return performance.now() - started;
}

const pairs = [];
for (let round = 0; round <= Number(rounds); round += 1)
  pairs.push([await timed(() => loadEngine(loadMicroPython, shipped)), await timed(fromSources)]);
console.log(JSON.stringify(pairs.slice(1)));
