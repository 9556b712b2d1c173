import specification from "../../../server/amberbench/text/figures.json";
import type { Units } from "../documents";
import { dimensionOf, fromSi, isInGrams, toSi, unitFor } from "./units";

/** A number as a reader sees it, and its unit; no unit where the text holds it already ("2 lb 8 oz"). */
export interface Figure {
  text: string;
  unit: string;
}

/** One way to write a size: rounded to `decimals`, to one of so many `parts`, or to whole units of the smaller unit `and`. */
interface Rung {
  unit: string;
  decimals?: number;
  parts?: number;
  and?: string;
  below?: number;
}

interface Marks {
  decimal: string;
  group: string;
  from: number;
}

const LADDERS: Record<string, Rung[]> = specification.ladders;
const SIGNS: Record<string, string> = specification.signs;
/** The words of a unit that is a word, by language: for one and for more. */
const WORDS: Record<string, Record<string, string[]>> = specification.words;
const MARKS: Record<string, Marks> = specification.marks;
const FINE = new RegExp(specification.fine);
/** From here on by power of ten. */
const HUGE = 1e9;
const MOST_FINER = 6;

/** What stands between and before digits for a locale ("es", "en-GB"). */
export function marksOf(locale: string): Marks {
  const own = specification.written_as_en.includes(locale) ? "en" : (locale.split("-")[0] as string);
  return (MARKS[own] ?? MARKS["en"]) as Marks;
}

/** A finite SI value (°C) as `units` and a locale have it; `finer` asks for so many decimals more than a reader needs;
 * `toward` rounds up (1) or down (−1), so that a limit, typed as it reads, is kept. */
export function written(name: string, value: number, units: Units, locale: string, finer = 0, toward = 0): Figure {
  const ladder = LADDERS[ladderName(name, units)] ?? [];
  const usual = ladder.find((rung) => rung.below === undefined || steps(rung, value) / stepsInOne(rung) < rung.below) as Rung;
  return onRung(finer ? { unit: usual.unit, decimals: (usual.decimals ?? 1) + finer } : usual, value, locale, toward);
}

/** A number with at most so many decimals, and none it does not need. */
export function plainNumber(value: number, decimals: number, locale: string): string {
  return onRung({ unit: "", decimals }, value, locale).text;
}

/** How many more decimals `written` needs until a value reads like none of the others that differ from it. */
export function finerToTellApart(name: string, value: number, others: number[], units: Units): number {
  const text = (one: number, finer: number) => Object.values(written(name, one, units, "en", finer)).join();
  const apart = others.filter((one) => one !== value);
  let finer = 0;
  while (finer < MOST_FINER && apart.some((one) => text(one, finer) === text(value, finer))) finer += 1;
  return finer;
}

/** Number and unit, with the space that belongs between them. */
export function withUnit(number: string, unit: string): string {
  return unit ? `${number}${specification.unit_space}${unit}` : number;
}

function ladderName(name: string, units: Units): string {
  const dimension = dimensionOf(name);
  if (dimension === "mass" && isInGrams(name, units)) return "kg";
  const unit = unitFor(dimension, units);
  return dimension === "temperature" && FINE.test(name) ? `${unit} fine` : unit;
}

function stepsInOne({ unit, decimals = 0, parts, and }: Rung): number {
  return and ? nearest(fromSi(toSi(1, unit), and)) : (parts ?? 10 ** decimals);
}

function steps(rung: Rung, value: number, toward = 0): number {
  const shown = fromSi(value, rung.unit);
  return nearest(Math.abs(shown) * stepsInOne(rung), shown < 0 ? -toward : toward);
}

/** The nearest whole number, ties up, or that above (1) or below (−1); the noise of binary fractions decides none. */
function nearest(size: number, toward = 0): number {
  const plain = Number(size.toPrecision(12));
  return toward > 0 ? Math.ceil(plain) : Math.floor(plain + (toward ? 0 : 0.5));
}

function onRung(rung: Rung, value: number, locale: string, toward = 0): Figure {
  const shown = fromSi(value, rung.unit);
  const count = steps(rung, value, toward);
  const { text, unit } = sized(rung, Math.abs(shown), count, locale);
  return { text: shown < 0 && count > 0 ? specification.minus + text : text, unit };
}

function sized(rung: Rung, size: number, count: number, locale: string): Figure {
  const marks = marksOf(locale);
  const unit = named(rung.unit, count > stepsInOne(rung), locale);
  if (size >= HUGE) return { text: byPower(size).replace(".", marks.decimal), unit };
  const [whole, rest] = [Math.floor(count / stepsInOne(rung)), count % stepsInOne(rung)];
  if (rung.and) return inTwoUnits(grouped(whole, marks), unit, rest, rung.and);
  if (rung.parts) return { text: withFraction(whole, rest, rung.parts, marks), unit };
  const decimals = rest ? marks.decimal + String(rest).padStart(rung.decimals ?? 0, "0").replace(/0+$/, "") : "";
  return { text: grouped(whole, marks) + decimals, unit };
}

function named(unit: string, several: boolean, locale: string): string {
  const words = WORDS[unit];
  const own = words?.[locale.split("-")[0] as string] ?? words?.["en"];
  return own?.[several ? 1 : 0] ?? SIGNS[unit] ?? unit;
}

/** How finely a unit is written in fractions ("15 1/2 in"); null: in decimals. */
export function partsOf(unit: string): number | null {
  return LADDERS[unit]?.find((rung) => rung.unit === unit && rung.parts)?.parts ?? null;
}

/** A number in parts of one ("15 1/2"), where it is a whole number of them; null where it is not. */
export function inParts(value: number, parts: number, locale: string): string | null {
  const count = nearest(Math.abs(value) * parts);
  if (Math.abs(Math.abs(value) * parts - count) > 1e-6) return null;
  return (value < 0 ? specification.minus : "") + withFraction(Math.floor(count / parts), count % parts, parts, marksOf(locale));
}

function inTwoUnits(whole: string, unit: string, rest: number, small: string): Figure {
  return rest ? { text: withUnit(whole, unit) + specification.part_space + withUnit(String(rest), small), unit: "" } : { text: whole, unit };
}

function withFraction(whole: number, rest: number, parts: number, marks: Marks): string {
  if (rest === 0) return grouped(whole, marks);
  let [top, bottom] = [rest, parts];
  while (top % 2 === 0) [top, bottom] = [top / 2, bottom / 2];
  return whole ? `${grouped(whole, marks)}${specification.part_space}${top}/${bottom}` : `${top}/${bottom}`;
}

function byPower(size: number): string {
  return size === Infinity ? "∞" : size.toExponential(2).replace(/\.?0*e/, "e");
}

function grouped(whole: number, { group, from }: Marks): string {
  return whole >= from ? String(whole).replace(/\B(?=(\d{3})+$)/g, group) : String(whole);
}
