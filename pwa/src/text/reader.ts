import { signal } from "@preact/signals";

import type { Units } from "../documents";
import { languageOfLocale } from "./catalogue";

/** Who reads: their language and units. Set by `state/shop`; every sentence and number drawn depends on it. */
interface Reader {
  language: string;
  units: Units;
}

export const METRIC: Units = { mass: "kg", length: "mm", temperature: "°C", power: "W" };

export const reader = signal<Reader>({ language: "en", units: METRIC });

/** The reader's locale: the browser's own where its readers get this language ("en-GB", "es-US"), else the language itself. */
export function locale(): string {
  const { language } = reader.value;
  const variants = typeof navigator === "undefined" ? [] : (navigator.languages ?? []);
  return variants.find((one) => languageOfLocale(one) === language) ?? language;
}
