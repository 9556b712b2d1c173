import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import type { Plugin } from "vite";

const FOLDER = fileURLToPath(new URL("../../server/amberbench/text", import.meta.url));
/** What only the server says stays there. */
const NOT_HERE = ["lan.json", "server.json"];
const ALL = "virtual:texts";
const ONE = `${ALL}/`;
/** A module made here; the nought is Rollup's sign that no file has this name. */
const MADE = "\0";

type Texts = Record<string, unknown>;
/** What `languages.json` says of a variant of a language. */
interface Variant {
  read_by: string[];
  words: Record<string, string>;
}

/** The sentences, one file a language, so that a phone waits for those it reads alone. They travel without their keys, which
 * the page holds once, in the order of the English ones: `virtual:texts` has the keys and loads a language. */
export function texts(): Plugin {
  return {
    name: "texts",
    resolveId: (id) => (id === ALL || id.startsWith(ONE) ? MADE + id : null),
    load(id) {
      const all = Object.keys(textsOf("en"));
      const keys = [...new Set(all.map(roomOf))].flatMap((room) => all.filter((key) => roomOf(key) === room));
      if (id === MADE + ALL) return overview(keys, languages());
      const language = languageIn(id);
      if (language === null) return null;
      return `export default ${inOrder(keys, textsOf(language))};\nexport const words = ${JSON.stringify(variants()[language]?.words ?? {})};`;
    },
  };
}

/** The language whose texts a module holds; null: another module. */
export function languageIn(id: string): string | null {
  return id.startsWith(MADE + ONE) ? id.slice(MADE.length + ONE.length) : null;
}

/** The sentences of `own` by `keys`, as JSON; null where there is none. */
export function inOrder(keys: string[], own: Texts): string {
  return JSON.stringify(keys.map((key) => own[key] ?? null));
}

function overview(keys: string[], all: string[]): string {
  const loads = all.map((one) => `${JSON.stringify(one)}: () => import("${ONE}${one}")`);
  const readBy = Object.fromEntries(Object.entries(variants()).map(([one, { read_by }]) => [one, read_by]));
  return [
    // The part before the first point once for all keys that have it: a tenth less to load.
    `export const keys = ${JSON.stringify(byRoom(keys))}.split("\\n").flatMap((one) => {`,
    `  const [room, ...rest] = one.split(" ");`,
    `  return rest.map((key) => room + "." + key);`,
    `});`,
    `export const loads = { ${loads.join(", ")} };`,
    `export const readBy = ${JSON.stringify(readBy)};`,
  ].join("\n");
}

/** A line for each first part of the keys: that part, and what follows it in each. */
function byRoom(keys: string[]): string {
  const rooms = [...new Set(keys.map(roomOf))];
  return rooms.map((room) => [room, ...keys.filter((key) => roomOf(key) === room).map((key) => key.slice(room.length + 1))].join(" ")).join("\n");
}

function roomOf(key: string): string {
  return key.split(".")[0] as string;
}

function variants(): Record<string, Variant> {
  return (JSON.parse(readFileSync(`${FOLDER}/languages.json`, "utf8")) as { variants: Record<string, Variant> }).variants;
}

/** English first: the others are read beside it. */
function languages(): string[] {
  const found = readdirSync(FOLDER, { withFileTypes: true }).filter((one) => one.isDirectory() && !one.name.startsWith("_"));
  return ["en", ...found.map(({ name }) => name).filter((name) => name !== "en").sort()];
}

function textsOf(language: string): Texts {
  const files = readdirSync(`${FOLDER}/${language}`).filter((name) => name.endsWith(".json") && !NOT_HERE.includes(name));
  return Object.assign({}, ...files.sort().map((name) => JSON.parse(readFileSync(`${FOLDER}/${language}/${name}`, "utf8")) as Texts)) as Texts;
}
