import { signal } from "@preact/signals";

/** A sentence, or one for each plural form, chosen by the value `n`. */
export type Sentence = string | Partial<Record<Intl.LDMLPluralRule, string>>;
type Sentences = Record<string, Sentence>;

const english = import.meta.glob<Sentences>(
  // What only the server says stays there.
  ["../../../server/amberbench/text/en/*.json", "!../../../server/amberbench/text/*/server.json"],
  { eager: true, import: "default" },
);
// Without their keys, in the order of the English ones (`build/bareTexts.ts`).
const others = import.meta.glob<(Sentence | null)[]>(
  ["../../../server/amberbench/text/*/*.json", "!../../../server/amberbench/text/en/*.json", "!../../../server/amberbench/text/*/server.json"],
  { import: "default" },
);

const FALL_BACK = "en";
const loaded = signal<Record<string, Sentences>>({ [FALL_BACK]: merged(Object.values(english)) });

function merged(files: Sentences[]): Sentences {
  return Object.assign({}, ...files) as Sentences;
}

/** The sentences of a file by key; keys that the language lacks are missing. */
function keyed(path: string, texts: (Sentence | null)[]): Sentences {
  const keys = Object.keys(english[path.replace(/\w+(?=\/\w+\.json$)/, FALL_BACK)] ?? {});
  return Object.fromEntries(keys.flatMap((key, i) => (texts[i] ? [[key, texts[i]]] : [])));
}

function languageOf(path: string): string {
  return path.split("/").at(-2) ?? "";
}

/** The languages there are texts for, in a fixed order. */
export const languages: string[] = [...new Set([FALL_BACK, ...Object.keys(others).map(languageOf)])];

/** The language this device is used in, the first of them there are texts for; English where there are none. */
export function spokenHere(): string {
  const wanted = navigator.languages.map((one) => one.split("-")[0] as string);
  return wanted.find((one) => languages.includes(one)) ?? FALL_BACK;
}

/** Loads the texts of a language; does nothing when they are here already or there are none. */
export async function loadLanguage(language: string): Promise<void> {
  if (loaded.value[language]) return;
  const files = Object.entries(others).filter(([path]) => languageOf(path) === language);
  if (files.length === 0) return;
  const texts = await Promise.all(files.map(async ([path, load]) => keyed(path, await load())));
  loaded.value = { ...loaded.value, [language]: merged(texts) };
}

/** The sentence of a key, in English where the language has none; undefined when nobody has it. */
export function sentence(key: string, language: string): Sentence | undefined {
  return loaded.value[language]?.[key] ?? loaded.value[FALL_BACK]?.[key];
}
