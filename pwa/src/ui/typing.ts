import type { Entry, TextEntry } from "../documents";
import { decimalMark, dimensionOf, finerFor, format, formatRange, parse, reader, t, unitFor } from "../text";

const MOST_DIGITS = 5;
/** As many as GS1 gives a lot (application identifier 10). */
const MOST_LETTERS = 20;

export type Typing = Entry | TextEntry;

/** A lot is copied from a label as it stands: it is not a number. */
export function isWord(entry: Typing): entry is TextEntry {
  return entry.low === null;
}

/** The key beside the nought: a decimal mark where parts make sense, nothing in a count. */
export function sideKey(entry: Typing): string | null {
  return dimensionOf(entry.name) === "" ? null : decimalMark();
}

/** The text after one more key. A key that makes no sense there changes nothing. */
export function pressed(text: string, key: string, entry: Typing): string {
  if (isWord(entry)) return text.length < MOST_LETTERS ? text + key : text;
  const mark = decimalMark();
  if (key === mark) return text.includes(mark) ? text : `${text || "0"}${mark}`;
  if (text === "0") return key;
  return text.replace(mark, "").length < MOST_DIGITS ? text + key : text;
}

export function typedUnit(entry: Typing): string {
  return isWord(entry) ? "" : unitFor(dimensionOf(entry.name), reader.value.units);
}

/** What was typed, for the event: SI, or the word itself; null while there is nothing to send. */
export function typedValue(text: string, entry: Typing): number | string | null {
  if (text === "") return null;
  if (isWord(entry)) return text;
  return parse(entry.name, text.replace(/[.,]$/, ""), typedUnit(entry)).value;
}

/** The sentence about a value outside the range it can have; null for one inside. */
export function outOfRangeMessage(value: number | string | null, entry: Typing): string | null {
  if (typeof value !== "number" || isWord(entry)) return null;
  const { low, high, name } = entry;
  if (value >= low && value <= high) return null;
  const finer = finerFor(name, value, [low, high]);
  return t("screen.impossible", { given: format(name, value, undefined, finer), range: formatRange(name, low, high, 1, finer) });
}

/** Where a value lies against the wanted band, in words; without a band, whether it surprises; else "". */
export function bandWords(value: number | string | null, entry: Typing): string {
  const { name, band_low, band_high, likely_low, likely_high } = entry;
  if (typeof value !== "number") return "";
  if (band_low === null || band_high === null) {
    if (likely_low !== null && value < likely_low) return t("screen.below_likely");
    return likely_high !== null && value > likely_high ? t("screen.over_likely") : "";
  }
  // What reads like an end of the window lies in it.
  const isOther = (end: number) => format(name, value) !== format(name, end);
  if (value < band_low && isOther(band_low)) return t("screen.below_window");
  return value > band_high && isOther(band_high) ? t("screen.over_window") : t("screen.in_window");
}
