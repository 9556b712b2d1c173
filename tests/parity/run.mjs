// Runs the engine as the phone's app carries it, in the phone's MicroPython, and answers a list of calls:
//   node run.mjs ENGINE.mpy DESK.mpy MICROPYTHON_FOLDER CASES.json ANSWERS.json
// Cases are [[name, request text], …]; answers are the texts call_text gives, or "raised: …" where it does not answer.
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

import { loadEngine } from "../../pwa/src/engine/loadEngine.ts";

const [engine, desk, micropython, casesFile, answersFile] = process.argv.slice(2);
const { loadMicroPython } = await import(pathToFileURL(join(micropython, "micropython.mjs")));
const { callText, add } = await loadEngine(loadMicroPython, readFileSync(engine));
add(readFileSync(desk));

const answers = JSON.parse(readFileSync(casesFile, "utf8")).map(([name, text]) => {
  try {
    return callText(name, text);
  } catch (error) {
    return `raised: ${error}`;
  }
});
writeFileSync(answersFile, JSON.stringify(answers));
