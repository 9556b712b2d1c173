import { readFile } from "node:fs/promises";

import type { Plugin } from "vite";

const ENGINE = /\/server\/amberbench\/engine\/[\w/]+\.py\?raw$/;

const FIELDS = /\/fields_?\w*\.py\?raw$/;

/** Ships the engine without its docstrings, its comments, the meanings of its fields and the room its lines take: a fifth
 * of the first load, read by nobody on a phone. */
export function bareEngine(): Plugin {
  return {
    name: "bare-engine",
    enforce: "pre",
    async load(id) {
      if (!ENGINE.test(id)) return null;
      const source = await readFile(id.replace(/\?raw$/, ""), "utf8");
      return `export default ${JSON.stringify(tight(FIELDS.test(id) ? meaningless(bare(source)) : bare(source)))};`;
    },
  };
}

/** A docstring opens a line and is all of its statement; no other text in the engine stands in three quotes.
 * Where it is all of its block, `pass` takes its place. */
export function bare(source: string): string {
  const docstring = /^([ \t]*)"""[\s\S]*?"""[ \t]*\n\n*(?:\1(?=\S)|)/gm;
  const code = source.replace(/^[ \t]*#.*\n/gm, "").replace(/  # [^"'\n]*$/gm, "");
  return code
    .replace(docstring, (all: string, indent: string) => (indent === "" || all.endsWith(`\n${indent}`) ? indent : `${indent}pass\n`))
    .replace(/\n{2,}/g, "\n");
}

/** Without the meanings of fields: sentences of three words or more; no name, unit or choice has two blanks in it. */
export function meaningless(source: string): string {
  return source.replace(/"(?:[^"\\\n]|\\.)*"/g, (text) => (text.split(" ").length > 2 ? '""' : text));
}

const BETWEEN = /("(?:[^"\\\n]|\\.)*")|(?<=\S) (?=[-=+*/%<>!,:()[\]{}|])|(?<=[-=+*/%<>!,:()[\]{}|]) /g;

/** With a blank for each step in and none beside a sign, and what stands in brackets on one line; no text in the engine
 * runs over lines or stands in single quotes. */
export function tight(source: string): string {
  return source
    .replace(/^(?: {4})+/gm, (indent) => " ".repeat(indent.length / 4))
    .replace(/([([{,])\n\s*/g, "$1")
    .replace(/\n\s*(?=[)\]}])/g, "")
    .replace(BETWEEN, (_all, text?: string) => text ?? "");
}
