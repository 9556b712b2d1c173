import { signal } from "@preact/signals";
import { keys, loads } from "virtual:texts";

import spec from "../../../server/amberbench/text/languages.json";

/** A sentence, or one for each plural form, chosen by the value `n`. */
export type Sentence = string | Partial<Record<Intl.LDMLPluralRule, string>>;

const FALL_BACK = "en";
const VARIANTS: [language: string, rule: { read_by: string[] }][] = Object.entries(spec.variants);
const loaded = signal<Record<string, Record<string, Sentence>>>({});

/** The languages there are texts for, in a fixed order. */
export const languages: string[] = Object.keys(loads);

/** The catalogues a reader's texts are looked for in: a variant's own, then that of its language. */
function chain(language: string): string[] {
  return [...new Set([language, language.split("-")[0] as string])].filter((one) => one in loads);
}

/** The language a reader of a locale ("es-US", "en-GB") gets; undefined where there are no texts for it. */
export function languageOfLocale(locale: string): string | undefined {
  const variant = VARIANTS.find(([, { read_by }]) => read_by.includes(locale))?.[0];
  return variant ?? languages.find((one) => one === locale.split("-")[0]);
}

/** The language this device is used in, the first of them there are texts for; English where there are none. */
export function spokenHere(): string {
  return navigator.languages.map(languageOfLocale).find(Boolean) ?? FALL_BACK;
}

/** What is taken of a choice: a word in the reader's own variant, else in its language. */
export function inLanguage<T>(choices: Record<string, T>, language: string): T | undefined {
  return chain(language).map((one) => choices[one]).find((one) => one !== undefined);
}

/** Loads the texts of a language, those it falls back to with it; does nothing when they are here. Rejects when they are
 * neither on the phone nor to be had. */
export async function loadLanguage(language: string): Promise<void> {
  await Promise.all(chain(language).map(loadOne));
}

/** Whether the texts of a language are loaded. */
export function hasTexts(language: string): boolean {
  return chain(language).every((one) => one in loaded.value);
}

async function loadOne(language: string): Promise<void> {
  if (loaded.value[language]) return;
  const texts = (await loads[language]!()).default;
  const found = Object.fromEntries(keys.flatMap((key, i) => (texts[i] ? [[key, texts[i]]] : [])));
  loaded.value = { ...loaded.value, [language]: found };
}

/** The sentence of a key; undefined when nobody has it. */
export function sentence(key: string, language: string): Sentence | undefined {
  for (const one of chain(language)) if (loaded.value[one]?.[key]) return loaded.value[one][key];
  return undefined;
}
