/** The server's engine files, for a MicroPython; titles of sources are read by nobody here. */
const files = import.meta.glob<string>(["../../../server/amberbench/engine/*.py", "!../../../server/amberbench/engine/sources.py"], {
  eager: true,
  query: "?raw",
  import: "default",
});

/** What it starts with (bytes); it grows by itself. A larger one makes every collection slower: measured here, a fold
 * of 400 events took 40 ms with 4 MB and 68 ms with 32 MB. */
const HEAP = 4 * 1024 * 1024;

export type CallText = (name: string, text: string) => string;

export interface MicroPython {
  FS: { mkdir(path: string): void; writeFile(path: string, text: string): void };
  globals: { get(name: string): unknown };
  runPython(code: string): void;
}

/** Loads, fills and starts it. */
export async function install(
  load: (options: { heapsize: number }) => Promise<MicroPython>,
): Promise<{ version: string; callText: CallText; python: MicroPython }> {
  const python = await load({ heapsize: HEAP });
  python.FS.mkdir("/amberbench");
  python.FS.mkdir("/amberbench/engine");
  python.FS.writeFile("/amberbench/__init__.py", "");
  for (const [path, text] of Object.entries(files))
    python.FS.writeFile(`/amberbench/engine/${path.split("/").at(-1)}`, text);
  python.runPython('import sys\nsys.path.insert(0, "/")');
  python.runPython("from amberbench.engine import VERSION\nfrom amberbench.engine.catalogue import call_text");
  const callText = python.globals.get("call_text") as CallText;
  return { version: String(python.globals.get("VERSION")), callText, python };
}
