import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

import type { Plugin } from "vite";

const FOLDER = fileURLToPath(new URL("../../server/amberbench/text", import.meta.url));
/** What only the server says stays there. */
const NOT_HERE = ["lan.json", "server.json"];
/** First parts of the keys of what places alone say: it comes with them, but for what stands in this file, which the bench says too. */
const AT_PLACES = ["cost", "labels", "learned", "lists", "months", "needs", "orders", "pack", "pair", "paper", "phones", "plan", "scan", "schedule", "settings", "shop", "stock", "stream", "trace", "weekday"];
const SAID_FIRST = "first.json";
const ALL = "virtual:texts";
const ONE = `${ALL}/`;
const OF_PLACES = `${ALL}-of-places/`;
/** A module made here; the nought is Rollup's sign that no file has this name. */
const MADE = "\0";

type Texts = Record<string, unknown>;
/** What `languages.json` says of a variant of a language. */
interface Variant {
  read_by: string[];
  words: Record<string, string>;
}

/** The sentences, two files a language, so that a phone waits for those it reads alone, and at the bench not for those of the
 * places. The first travel without their keys, which the page holds once, in the order of the English ones: `virtual:texts` has
 * the keys and loads a language. */
export function texts(): Plugin {
  return {
    name: "texts",
    resolveId: (id) => (id === ALL || id.startsWith(ONE) || id.startsWith(OF_PLACES) ? MADE + id : null),
    load(id) {
      const all = Object.keys(textsOf("en"));
      const later = laterKeys();
      const keys = [...new Set(all.map(roomOf))].flatMap((room) => all.filter((key) => roomOf(key) === room && !later.has(key)));
      if (id === MADE + ALL) return overview(keys, languages());
      const { language, ofPlaces } = textsIn(id) ?? {};
      if (!language) return null;
      const own = textsOf(language);
      if (ofPlaces) return `export default ${JSON.stringify(Object.fromEntries(Object.entries(own).filter(([key]) => later.has(key))))};`;
      return `export default ${inOrder(keys, own)};\nexport const words = ${JSON.stringify(variants()[language]?.words ?? {})};`;
    },
    generateBundle(_, bundle) {
      const first = Object.values(bundle).find((one) => one.type === "chunk" && one.name === "app");
      if (first?.type !== "chunk") return this.error("no first file");
      const early = saidIn(first.code, laterKeys());
      if (early.length) this.error(`the first file says what comes with the places; move to ${SAID_FIRST} of every language: ${early.join(", ")}`);
    },
  };
}

/** Which keys of some a file says: whole, or by how they begin. */
export function saidIn(code: string, keys: Iterable<string>): string[] {
  const named = [...code.matchAll(/["'`]([a-z]+\.[\w.]*)(["'`]|\$\{)/g)].map(([, name, end]) => ({ name: name as string, whole: end !== "${" && !name?.endsWith(".") }));
  const [whole, begun] = [new Set(named.filter((one) => one.whole).map(({ name }) => name)), named.filter((one) => !one.whole)];
  return [...keys].filter((key) => whole.has(key) || begun.some(({ name }) => key.startsWith(name)));
}

/** Of a module of texts the language, and whether it holds what places say; null: another module. */
export function textsIn(id: string): { language: string; ofPlaces: boolean } | null {
  const start = [ONE, OF_PLACES].find((one) => id.startsWith(MADE + one));
  return start ? { language: id.slice(MADE.length + start.length), ofPlaces: start === OF_PLACES } : null;
}

function laterKeys(): Set<string> {
  const first = sentencesIn(`en/${SAID_FIRST}`);
  return new Set(Object.keys(textsOf("en")).filter((key) => AT_PLACES.includes(roomOf(key)) && !(key in first)));
}

/** The sentences of `own` by `keys`, as JSON; null where there is none. */
export function inOrder(keys: string[], own: Texts): string {
  return JSON.stringify(keys.map((key) => own[key] ?? null));
}

function overview(keys: string[], all: string[]): string {
  const loads = (start: string) => all.map((one) => `${JSON.stringify(one)}: () => import("${start}${one}")`).join(", ");
  const readBy = Object.fromEntries(Object.entries(variants()).map(([one, { read_by }]) => [one, read_by]));
  return [
    // The part before the first point once for all keys that have it: a tenth less to load.
    `export const keys = ${JSON.stringify(byRoom(keys))}.split("\\n").flatMap((one) => {`,
    `  const [room, ...rest] = one.split(" ");`,
    `  return rest.map((key) => room + "." + key);`,
    `});`,
    `export const loads = { ${loads(ONE)} };`,
    `export const loadsOfPlaces = { ${loads(OF_PLACES)} };`,
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
  return Object.assign({}, ...files.sort().map((name) => sentencesIn(`${language}/${name}`))) as Texts;
}

function sentencesIn(file: string): Texts {
  return JSON.parse(readFileSync(`${FOLDER}/${file}`, "utf8")) as Texts;
}
