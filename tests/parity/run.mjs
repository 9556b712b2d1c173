// Runs the engine's own files under MicroPython and answers a list of calls:
//   node run.mjs ENGINE_FOLDER MICROPYTHON_FOLDER CASES.json ANSWERS.json
// Cases are [[name, request text], …]; answers are the texts call_text gives, or "raised: …" where it does not answer.
import { readFileSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [engine, micropython, casesFile, answersFile] = process.argv.slice(2);
const { loadMicroPython } = await import(pathToFileURL(join(micropython, "micropython.mjs")));
const python = await loadMicroPython({ heapsize: 32 * 1024 * 1024 });
python.FS.mkdir("/amberbench");
python.FS.writeFile("/amberbench/__init__.py", "");
function put(folder, at) {
  python.FS.mkdir(at);
  for (const one of readdirSync(folder, { withFileTypes: true })) {
    if (one.isDirectory() && one.name !== "__pycache__") put(join(folder, one.name), `${at}/${one.name}`);
    else if (one.name.endsWith(".py")) python.FS.writeFile(`${at}/${one.name}`, readFileSync(join(folder, one.name), "utf8"));
  }
}
put(engine, "/amberbench/engine");
python.runPython('import sys\nsys.path.insert(0, "/")\nfrom amberbench.engine.catalogue import call_text');
const callText = python.globals.get("call_text");

const answers = JSON.parse(readFileSync(casesFile, "utf8")).map(([name, text]) => {
  try {
    return callText(name, text);
  } catch (error) {
    return `raised: ${error}`;
  }
});
writeFileSync(answersFile, JSON.stringify(answers));
