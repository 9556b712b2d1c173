// How long the engine as shipped looks for a name, in the phone's MicroPython, as a multiple of a local name:
//   node name_lookups.mjs ENGINE.mpy MICROPYTHON_FOLDER NAMES.json TIMES.json
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { loadEngine } from "../../pwa/src/engine/loadEngine.ts";

const [engine, micropython, namesFile, timesFile] = process.argv.slice(2);
const { loadMicroPython } = await import(pathToFileURL(join(micropython, "micropython.mjs")));
const { python } = await loadEngine(loadMicroPython, readFileSync(engine));

const TIMES = 4_000;
const TRIES = 7;

function shortest(name) {
  const source = `def looks(local):\\n  for _ in range(local):\\n    ${`${name}; `.repeat(8)}`;
  python.runPython(`exec("${source}", sys.modules["engine"].__dict__)\nfrom engine import looks`);
  const looks = python.globals.get("looks");
  return Math.min(
    ...Array.from({ length: TRIES }, () => {
      const before = process.cpuUsage().user;
      looks(TIMES);
      return process.cpuUsage().user - before;
    }),
  );
}

const local = shortest("local");
const names = JSON.parse(readFileSync(namesFile, "utf8"));
writeFileSync(timesFile, JSON.stringify(Object.fromEntries(names.map((name) => [name, shortest(name) / local]))));
