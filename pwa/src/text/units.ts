import specification from "../../../server/amberbench/text/figures.json";
import type { Units } from "../documents";

interface Unit {
  dimension: string;
  factor: number;
  offset?: number;
  typed: number;
}

/** Every unit a figure may be typed or shown in. SI = value * factor + offset; `typed` are its decimals while it is typed. */
export const UNITS: Record<string, Unit> = specification.units;

/** Other ways to write a unit, English and Spanish, all in small letters. */
export const SPELLINGS: Record<string, string> = {
  gram: "g",
  grams: "g",
  gramo: "g",
  gramos: "g",
  kilo: "kg",
  kilos: "kg",
  onza: "oz",
  onzas: "oz",
  ounce: "oz",
  ounces: "oz",
  lbs: "lb",
  pound: "lb",
  pounds: "lb",
  libra: "lb",
  libras: "lb",
  '"': "in",
  "″": "in",
  inch: "in",
  inches: "in",
  pulg: "in",
  pulgada: "in",
  pulgadas: "in",
  c: "°C",
  "°c": "°C",
  f: "°F",
  "°f": "°F",
  w: "W",
  kw: "kW",
  sec: "s",
  hr: "h",
  seg: "s",
  segundos: "s",
  minutos: "min",
  hora: "h",
  horas: "h",
  floz: "fl oz",
  cups: "cup",
  taza: "cup",
  tazas: "cup",
};

const SUFFIXES: readonly [suffix: string, dimension: string][] = Object.entries(specification.suffixes);

/** The suffix that says the engine's unit; none for those that no reader has another for ("Pa s"). */
export const SUFFIX_OF: Record<string, string> = specification.suffix_of;

/** What a name measures, from its suffix: "piece_length_m" → "length"; "" for a plain number. */
export function dimensionOf(name: string): string {
  if (name === "due_ms" || name.endsWith("_at_ms") || name === "at_ms") return "instant";
  return SUFFIXES.find(([suffix]) => `_${name}`.endsWith(`_${suffix}`))?.[1] ?? "";
}

/** The units a dimension can be typed in. */
export function unitsOf(dimension: string): string[] {
  return Object.keys(UNITS).filter((unit) => UNITS[unit]?.dimension === dimension);
}

export function toSi(value: number, unit: string): number {
  const { factor = 1, offset = 0 } = UNITS[unit] ?? {};
  return value * factor + offset;
}

export function fromSi(value: number, unit: string): number {
  const { factor = 1, offset = 0 } = UNITS[unit] ?? {};
  return (value - offset) / factor;
}

const CHOSEN: Record<string, { by: string; unit: Record<string, string> }> = specification.chosen;
const FIXED: Record<string, string> = specification.fixed;
const IN_GRAMS = new RegExp(specification.in_grams);

/** The unit a reader of `units` has for a dimension. */
export function unitFor(dimension: string, units: Units): string {
  const chosen = CHOSEN[dimension];
  if (!chosen) return FIXED[dimension] ?? "";
  const own = units[chosen.by as keyof Units];
  return chosen.unit[own] ?? own;
}

/** What is weighed in grams everywhere: a pinch of salt, a deposit, a nut, ten clusters. */
export function isInGrams(name: string, { mass }: Units): boolean {
  return IN_GRAMS.test(name) && (mass === "lb" || mass === "oz");
}

/** The unit a value of this name is first typed in. */
export function typedIn(name: string, units: Units): string {
  return IN_GRAMS.test(name) ? "g" : unitFor(dimensionOf(name), units);
}
