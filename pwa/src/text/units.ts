import type { Units } from "../documents";

/** The same closed list as engine/units.py: dimension, factor to SI, offset (SI = value * factor + offset).
 * Exact by definition: NIST SP 811 (2008), appendix B.8. `K` and `F°` are differences. */
export const UNITS: Record<string, readonly [dimension: string, factor: number, offset: number]> = {
  g: ["mass", 0.001, 0],
  kg: ["mass", 1, 0],
  oz: ["mass", 0.45359237 / 16, 0],
  lb: ["mass", 0.45359237, 0],
  mm: ["length", 0.001, 0],
  cm: ["length", 0.01, 0],
  m: ["length", 1, 0],
  in: ["length", 0.0254, 0],
  "cm²": ["area", 1e-4, 0],
  "m²": ["area", 1, 0],
  "in²": ["area", 0.0254 * 0.0254, 0],
  "°C": ["temperature", 1, 0],
  "°F": ["temperature", 1 / 1.8, -32 / 1.8],
  K: ["difference", 1, 0],
  "F°": ["difference", 1 / 1.8, 0],
  W: ["power", 1, 0],
  kW: ["power", 1000, 0],
  ml: ["volume", 1e-6, 0],
  l: ["volume", 1e-3, 0],
  "g/ml": ["density", 1000, 0],
  "kg/m³": ["density", 1, 0],
  "kg/m²": ["load", 1, 0],
  "%": ["share", 0.01, 0],
  s: ["time", 1, 0],
  min: ["time", 60, 0],
  h: ["time", 3600, 0],
};

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
};

const DIMENSIONS: readonly [suffix: string, dimension: string][] = [
  ["kg_m3", "density"],
  ["kg_m2", "load"],
  ["m3", "volume"],
  ["humidity", "share"],
  ["fill", "share"],
  ["share", "share"],
  ["kg", "mass"],
  ["m", "length"],
  ["m2", "area"],
  ["c", "temperature"],
  ["k", "difference"],
  ["s", "time"],
  ["w", "power"],
];

/** The suffix of each dimension. */
export const SUFFIXES: Record<string, string> = Object.fromEntries(DIMENSIONS.map(([suffix, dimension]) => [dimension, suffix]));

/** What a name measures, from its suffix: "piece_length_m" → "length"; "" for a plain number. */
export function dimensionOf(name: string): string {
  if (name === "due_ms" || name.endsWith("_at_ms") || name === "at_ms") return "instant";
  return DIMENSIONS.find(([suffix]) => `_${name}`.endsWith(`_${suffix}`))?.[1] ?? "";
}

/** The units a dimension can be typed in. */
export function unitsOf(dimension: string): string[] {
  return Object.keys(UNITS).filter((unit) => UNITS[unit]?.[0] === dimension);
}

export function toSi(value: number, unit: string): number {
  const [, factor, offset] = UNITS[unit] ?? ["", 1, 0];
  return value * factor + offset;
}

export function fromSi(value: number, unit: string): number {
  const [, factor, offset] = UNITS[unit] ?? ["", 1, 0];
  return (value - offset) / factor;
}

/** The unit a reader of `units` sees a value in; small masses go to the smaller unit of the same family. */
export function unitFor(dimension: string, units: Units, value?: number): string {
  const imperial = units.length === "in";
  switch (dimension) {
    case "mass":
      return massUnit(units.mass, value);
    case "length":
      return units.length;
    case "area":
      return imperial ? "in²" : "cm²";
    case "temperature":
      return units.temperature;
    case "difference":
      return units.temperature === "°F" ? "F°" : "K";
    case "power":
      return units.power;
    case "time":
      return "s";
    case "volume":
      return "ml";
    case "density":
      return "g/ml";
    case "load":
      return "kg/m²";
    case "share":
      return "%";
    default:
      return "";
  }
}

/** What is weighed in grams everywhere: a pinch of salt, a deposit, a nut, ten clusters. */
const IN_GRAMS = /(each|deposit|second|together|under)_kg$/;

/** The unit a value of this name is first typed in. */
export function typedIn(name: string, units: Units): string {
  return IN_GRAMS.test(name) ? "g" : unitFor(dimensionOf(name), units);
}

function massUnit(unit: Units["mass"], value?: number): string {
  if (value === undefined) return unit;
  const small = Math.abs(value);
  if (unit === "kg" && small < 0.1) return "g";
  if (unit === "lb" && small < 0.2) return "oz";
  return unit;
}
