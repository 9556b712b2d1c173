import { signal } from "@preact/signals";
import { keys, loads, loadsOfPlaces, readBy } from "virtual:texts";

/** A sentence, or one for each plural form, chosen by the value `n`. */
export type Sentence = string | Partial<Record<Intl.LDMLPluralRule, string>>;

const FALL_BACK = "en";
type Sentences = Record<string, Sentence>;
const loaded = signal<Record<string, Sentences>>({});
/** By language: what its variant says otherwise; what places say. */
const words: Record<string, Record<string, string>> = {};
const ofPlaces: Record<string, Sentences> = {};
let placesAsked = false;

/** The languages there are texts for, in a fixed order. */
export const languages: string[] = Object.keys(loads);

/** The language that one is a variant of; itself where it is none. */
function baseOf(language: string): string {
  return language.split("-")[0] as string;
}

/** The language a reader of a locale ("es-US", "en-GB") gets; undefined where there are no texts for it. */
export function languageOfLocale(locale: string): string | undefined {
  return languages.find((one) => readBy[one]?.includes(locale)) ?? languages.find((one) => one === baseOf(locale));
}

/** The language this device is used in, the first of them there are texts for; English where there are none. */
export function spokenHere(): string {
  return navigator.languages.map(languageOfLocale).find(Boolean) ?? FALL_BACK;
}

/** What is taken of a choice: a word in the reader's own variant, else in its language. */
export function inLanguage<T>(choices: Record<string, T>, language: string): T | undefined {
  return choices[language] ?? choices[baseOf(language)];
}

/** Loads the texts of a language, with those of the places once they were asked for; does nothing when they are here.
 * Rejects when they are neither on the phone nor to be had. */
export async function loadLanguage(language: string): Promise<void> {
  const load = loads[language];
  if (!load) return;
  const base = baseOf(language);
  if (!hasTexts(language)) {
    const [texts] = await Promise.all([load(), base === language ? null : loadLanguage(base)]);
    const own = Object.fromEntries(keys.flatMap((key, i) => (texts.default[i] ? [[key, texts.default[i]]] : [])));
    words[language] = texts.words;
    take(language, { ...inWords(texts.words, loaded.value[base] ?? {}), ...own });
  }
  if (placesAsked) await loadOfPlaces(language);
}

/** Loads what places say, in every language that is here and in each that will be. */
export async function loadPlaceTexts(): Promise<void> {
  placesAsked = true;
  await Promise.all(Object.keys(loaded.value).map(loadLanguage));
}

async function loadOfPlaces(language: string): Promise<void> {
  if (ofPlaces[language]) return;
  const base = baseOf(language);
  const [texts] = await Promise.all([loadsOfPlaces[language]?.(), base === language ? null : loadOfPlaces(base)]);
  ofPlaces[language] = { ...inWords(words[language] ?? {}, ofPlaces[base] ?? {}), ...texts?.default };
  take(language, ofPlaces[language]);
}

function take(language: string, sentences: Sentences): void {
  loaded.value = { ...loaded.value, [language]: { ...loaded.value[language], ...sentences } };
}

/** Whether the texts of a language are loaded. */
export function hasTexts(language: string): boolean {
  return language in loaded.value;
}

/** The sentences of a language in a variant's words: whole words alone, the longest first, and a capital stays one. */
function inWords(words: Record<string, string>, sentences: Sentences): Sentences {
  const longestFirst = Object.keys(words).sort((a, b) => b.length - a.length);
  const all = new RegExp(`(^|[^\\p{L}\\d_{])(${longestFirst.join("|")})(?![\\p{L}\\d_}])`, "giu");
  const capital = (word: string) => (word[0] as string).toUpperCase() + word.slice(1);
  const varied = (text: string) =>
    text.replace(all, (_, before: string, found: string) => {
      const word = words[found.toLowerCase()] as string;
      return before + (found[0] === found[0]?.toLowerCase() ? word : capital(word));
    });
  const both = ([key, said]: [string, Sentence]) =>
    [key, typeof said === "string" ? varied(said) : Object.fromEntries(Object.entries(said).map(([form, one]) => [form, varied(one)]))] as const;
  return longestFirst.length ? Object.fromEntries(Object.entries(sentences).map(both)) : {};
}

/** The sentence of a key; undefined when nobody has it. */
export function sentence(key: string, language: string): Sentence | undefined {
  return loaded.value[language]?.[key];
}
