import type { Units } from "../documents";
import { numberFormat } from "./numbers";
import { locale, reader } from "./reader";
import { dimensionOf, fromSi, unitFor } from "./units";

export interface Figure {
  text: string;
  unit: string;
}

/** Most decimals shown in each unit: as fine as scales, rules and infrared thermometers read. */
const DECIMALS: Record<string, number> = {
  kg: 2,
  g: 0,
  lb: 2,
  oz: 1,
  mm: 1,
  cm: 1,
  m: 3,
  in: 2,
  "cm²": 0,
  "in²": 1,
  "m²": 3,
  "°C": 0,
  "°F": 0,
  K: 1,
  "F°": 1,
  W: 0,
  kW: 2,
  ml: 0,
  l: 2,
  "g/ml": 2,
  "kg/m³": 0,
  "%": 1,
};
/** Nobody at a bench says kelvin. */
const DIFFERENCES: Record<string, string> = { "F°": "°F", K: "°C" };
const NARROW_SPACE = "\u202f";

/** Chocolate is in temper within a kelvin, and a pinch of salt is a tenth of a gram. */
const FINE = /^(bowl_|seed_|targets[._]|temper\.)/;

function decimals(name: string, unit: string, shown: number): number {
  if (unit.startsWith("°") && FINE.test(name)) return 1;
  if (unit === "g" && Math.abs(shown) < 1) return 2;
  if (unit === "oz" && Math.abs(shown) < 0.1) return 3;
  // A centre weighs 14.3 g, a slab 1 134 g.
  if (unit === "g" && Math.abs(shown) < 100) return 1;
  if (unit === "oz" && Math.abs(shown) < 1) return 2;
  // Bars are 12.7 mm high; nobody sets a frame to a tenth.
  if (unit === "mm" && Math.abs(shown) >= 100) return 0;
  return DECIMALS[unit] ?? 2;
}

export function formatNumber(value: number, most = 2): string {
  // An exact zero, lest a small negative be shown as "-0".
  const zero = Math.abs(value) < 0.5 * 10 ** -most;
  const parts = numberFormat({ maximumFractionDigits: most }).formatToParts(zero ? 0 : value);
  return parts.map(unambiguous).join("");
}

/** Thousands are never set off by a point: scales show "12.500" for twelve and a half, and `parse` reads it so. */
function unambiguous({ type, value }: Intl.NumberFormatPart): string {
  return type === "group" && value === "." ? NARROW_SPACE : value;
}

/** A duration in words that fit a glance and stay on one line: 45 s, 1 min 40 s, 47 min, 1 h 40 min. Input in seconds. */
export function formatDuration(seconds: number): string {
  return oneLine(durationWords(seconds));
}

function oneLine(words: string): string {
  return words.replace(/ (?=\D)/g, NARROW_SPACE).replaceAll(" ", "\u00a0");
}

function durationWords(seconds: number): string {
  const all = Math.round(Math.abs(seconds));
  const sign = seconds < 0 && all > 0 ? "−" : "";
  if (all < 100) return `${sign}${all} s`;
  if (all < 600) return `${sign}${Math.floor(all / 60)} min${all % 60 ? ` ${all % 60} s` : ""}`;
  const minutes = Math.round(all / 60);
  if (minutes < 100) return `${sign}${minutes} min`;
  return `${sign}${Math.floor(minutes / 60)} h${minutes % 60 ? ` ${minutes % 60} min` : ""}`;
}

/** Time left, for a running clock: 0:07, 4:37, then whole minutes. Input in ms; a clock past due shows 0:00. */
export function formatCountdown(leftMs: number): Figure {
  const seconds = Math.max(0, Math.ceil(leftMs / 1000));
  if (seconds < 600) return { text: `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, "0")}`, unit: "" };
  const minutes = Math.ceil(seconds / 60);
  if (minutes < 100) return { text: String(minutes), unit: "min" };
  return { text: `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, "0")}`, unit: "h" };
}

/** The time of day of an instant (ms): "3:40 pm" or "15:40", as the reader's locale has it. */
export function formatTime(ms: number): string {
  return new Intl.DateTimeFormat(locale(), { hour: "numeric", minute: "2-digit" }).format(ms);
}

/** Day and time of an instant (ms), for lists and records. */
export function formatDay(ms: number): string {
  const parts = { weekday: "short", day: "numeric", month: "short", hour: "numeric", minute: "2-digit" } as const;
  return new Intl.DateTimeFormat(locale(), parts).format(ms);
}

/** The same with its year, for what is kept on paper. */
export function formatDate(ms: number): string {
  const parts = { year: "numeric", month: "long", day: "numeric", hour: "numeric", minute: "2-digit" } as const;
  return new Intl.DateTimeFormat(locale(), parts).format(ms);
}

/** A value and its unit apart, for the one big number. The suffix of `name` says what it measures; SI in. */
export function figure(name: string, value: number, units: Units = reader.value.units): Figure {
  const dimension = dimensionOf(name);
  if (dimension === "instant") return { text: formatTime(value), unit: "" };
  if (dimension === "time") return splitDuration(durationWords(value));
  if (dimension === "") return { text: formatNumber(value), unit: "" };
  const unit = unitFor(dimension, units, value);
  const shown = fromSi(value, unit);
  return { text: formatNumber(shown, decimals(name, unit, shown)), unit: DIFFERENCES[unit] ?? unit };
}

function splitDuration(words: string): Figure {
  const [number, unit, ...more] = words.split(" ");
  return more.length ? { text: oneLine(words), unit: "" } : { text: number ?? "", unit: unit ?? "" };
}

/** A value as the reader sees it, unit and all: format("mass_kg", 1.134) → "1.13 kg". Lists are joined. */
export function format(name: string, value: unknown, units?: Units): string {
  if (Array.isArray(value)) return value.map((one) => format(name, one, units)).join(", ");
  if (typeof value === "string") return value;
  if (typeof value !== "number" || !Number.isFinite(value)) return value == null ? "–" : String(value);
  const { text, unit } = figure(name, value, units);
  return unit ? `${text}${NARROW_SPACE}${unit}` : text;
}

/** A range with its unit once: formatRange("window_c", 71, 77) → "71–77 °C". */
export function formatRange(name: string, low: number, high: number): string {
  const bottom = figure(name, low);
  const top = figure(name, high);
  if (bottom.unit !== top.unit || bottom.unit === "") return `${format(name, low)} – ${format(name, high)}`;
  if (bottom.text === top.text) return format(name, low);
  return `${bottom.text}–${top.text}${NARROW_SPACE}${top.unit}`;
}
