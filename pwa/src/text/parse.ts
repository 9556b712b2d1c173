import type { ProblemDocument } from "../documents";
import { inParts, marksOf, partsOf, plainNumber } from "./figures";
import { locale, reader } from "./reader";
import { dimensionOf, fromSi, SPELLINGS, toSi, unitFor, UNITS, unitsOf } from "./units";

/** What was typed, in SI; or why it cannot be taken. Nothing typed: both null. */
export interface Parsed {
  value: number | null;
  problem: ProblemDocument | null;
}

/** One number, plain or as a fraction ("1/2", "1 1/2"), and what follows it. Nothing is evaluated. */
const QUANTITY = /^([+−-]?)\s*(?:(\d+)[ \u00a0]+)?(?:(\d+)\s*\/\s*(\d+)|(\d(?:[\d.,\u202f]|\u00a0(?=\d{3}))*|[.,]\d+))\s*(fl\s?oz|[^\d\s.,]*)\s*/iu;
const CLOCK = /^(\d+):([0-5]\d)(?::([0-5]\d))?$/;

/** Reads a quantity for a field. `unit` is what a bare number means (default: the reader's own unit). */
export function parse(name: string, text: string, unit?: string): Parsed {
  const words = text.trim();
  if (words === "") return { value: null, problem: null };
  const dimension = dimensionOf(name);
  const clock = dimension === "time" ? CLOCK.exec(words) : null;
  if (clock) return { value: clockSeconds(clock), problem: null };
  const own = unit ?? unitFor(dimension, reader.value.units);
  return sum(name, words, dimension, own);
}

/** Adds up "2 lb 8 oz"; a minus sign counts for the whole. */
function sum(name: string, words: string, dimension: string, own: string): Parsed {
  let rest = words;
  let total = 0;
  let sign = 1;
  for (let first = true; rest !== ""; first = false) {
    const match = QUANTITY.exec(rest);
    const number = match ? numberOf(match) : null;
    if (!match || number === null || (!first && (match[1] || !match[6] || dimension === "temperature")))
      return unreadable(name, words, own, dimension);
    if (match[6] && dimension === "") return unreadable(name, words, own, dimension);
    if (match[1] && match[1] !== "+") sign = -1;
    const unit = match[6] ? spelled(match[6]) : own;
    if (unit !== "" && !(unit in UNITS)) return fault(name, "unknown_unit", match[6], own, unitsOf(dimension));
    if (unit !== "" && UNITS[unit]?.dimension !== dimension) return fault(name, "wrong_unit", match[6], own, unitsOf(dimension));
    total += toSi(sign * number, unit);
    rest = rest.slice(match[0].length);
  }
  return { value: total, problem: null };
}

/** Names what was typed and, where there are any, the units that would do. */
function unreadable(name: string, words: string, own: string, dimension: string): Parsed {
  const units = unitsOf(dimension);
  return units.length ? fault(name, "not_a_quantity", words, own, units) : fault(name, "not_a_number", words, own);
}

function spelled(unit: string): string {
  return unit in UNITS ? unit : (SPELLINGS[unit.toLowerCase()] ?? unit.toLowerCase());
}

function numberOf(match: RegExpExecArray): number | null {
  const [, , whole, top, bottom, plain] = match;
  if (top !== undefined) {
    if (Number(bottom) === 0) return null;
    return Number(whole ?? 0) + Number(top) / Number(bottom);
  }
  if (whole !== undefined || plain === undefined) return null;
  return numberIn(plain.replace(/[\u00a0\u202f]/g, "").replace(/[.,]$/, ""));
}

/** "2.5", "2,5" and, where the language groups with a comma, "1,250"; elsewhere "1.250,5", but "1.250" is a scale's. */
function numberIn(digits: string): number | null {
  const groupsByComma = marksOf(locale()).group === ",";
  const grouped = groupsByComma ? /^\d{1,3}(,\d{3})+(\.\d*)?$/ : /^\d{1,3}(\.\d{3})+,\d*$/;
  const bare = grouped.test(digits) ? digits.replaceAll(groupsByComma ? "," : ".", "") : digits;
  const plain = bare.replace(",", ".");
  return /^\d*\.?\d*$/.test(plain) && plain !== "." ? Number(plain) : null;
}

function clockSeconds([, first, second, third]: RegExpExecArray): number {
  const [a, b] = [Number(first), Number(second)];
  return third === undefined ? a * 60 + b : a * 3600 + b * 60 + Number(third);
}

export function fault(field: string, code: string, given: unknown, unit: string, accepted: string[] | null = null): Parsed {
  const message = `${field}: ${code}`;
  return { value: null, problem: { field, code, given, low: null, high: null, unit, accepted, message } };
}

/** A value as one would type it: a fraction where its unit is read in fractions, else as fine as the unit is typed; no unit. */
export function editable(name: string, value: number, unit?: string): string {
  const own = unit ?? unitFor(dimensionOf(name), reader.value.units);
  const shown = fromSi(value, own);
  const parts = partsOf(own);
  const fraction = parts && inParts(shown, parts, locale());
  if (fraction) return fraction;
  const decimals = UNITS[own]?.typed ?? Math.max(0, 5 - Math.floor(Math.log10(Math.abs(shown) || 1)));
  return plainNumber(shown, decimals, locale()).replaceAll(marksOf(locale()).group, "");
}

/** The mark between whole and part in the reader's language: "." or ",". */
export function decimalMark(): string {
  return marksOf(locale()).decimal;
}
