import specification from "../../../server/amberbench/text/figures.json";
import type { Units } from "../documents";
import { type Figure, finerToTellApart, plainNumber, withUnit, written } from "./figures";
import { locale, reader } from "./reader";
import { dimensionOf } from "./units";

export function formatNumber(value: number, most = 2): string {
  return plainNumber(value, most, locale());
}

/** A duration in words that fit a glance and stay on one line: 45 s, 1 min 40 s, 47 min, 1 h 40 min. Input in seconds. */
export function formatDuration(seconds: number): string {
  return format("s", seconds);
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
  return clock(ms, {});
}

/** Day and time of an instant (ms), for lists and records. */
export function formatDay(ms: number): string {
  return clock(ms, { weekday: "short", day: "numeric", month: "short" });
}

/** The same with its year, for what is kept on paper. */
export function formatDate(ms: number): string {
  return clock(ms, { year: "numeric", month: "long", day: "numeric" });
}

/** A day as it is kept, "2027-03-31", in the reader's words. */
export function formatDayOf(day: string): string {
  const [year, month, date] = day.split("-").map(Number);
  const at = new Date(year!, month! - 1, date);
  return kept({ year: "numeric", month: "short", day: "numeric" }, at).format(at);
}

/** A month, "2026-11", without its year. */
export function formatMonth(month: string): string {
  const [year, nth] = month.split("-").map(Number);
  const first = new Date(year!, nth! - 1);
  return kept({ month: "short" }, first).format(first);
}

const formats = new Map<string, Intl.DateTimeFormat>();

/** A browser takes a millisecond or more to make one. Whoever travels gets another: one that was made keeps its zone. */
function kept(options: Intl.DateTimeFormatOptions, at: Date): Intl.DateTimeFormat {
  const key = `${locale()} ${at.getTimezoneOffset()} ${JSON.stringify(options)}`;
  const made = formats.get(key) ?? new Intl.DateTimeFormat(locale(), options);
  formats.set(key, made);
  return made;
}

/** Engines differ in whether "05:43" keeps its nought; an hour here has none. */
function clock(ms: number, day: Intl.DateTimeFormatOptions): string {
  const parts = kept({ ...day, hour: "numeric", minute: "2-digit" }, new Date(ms)).formatToParts(ms);
  return parts.map(({ type, value }) => (type === "hour" ? String(Number(value)) : value)).join("");
}

/** A value and its unit apart, for the one big number. The suffix of `name` says what it measures; SI in. */
export function figure(name: string, value: number, units: Units = reader.value.units, finer = 0, toward = 0): Figure {
  if (dimensionOf(name) === "instant") return { text: formatTime(value), unit: "" };
  return written(name, value, units, locale(), finer, toward);
}

/** A value as the reader sees it, unit and all: format("mass_kg", 1.134) → "1.13 kg". Lists are joined. */
export function format(name: string, value: unknown, units?: Units, finer = 0, toward = 0): string {
  if (Array.isArray(value)) return value.map((one) => format(name, one, units)).join(", ");
  if (typeof value === "string") return value;
  if (value == null || Number.isNaN(value)) return specification.nothing;
  if (typeof value !== "number") return String(value);
  const { text, unit } = figure(name, value, units, finer, toward);
  return withUnit(text, unit);
}

/** How many more decimals it takes until a value reads like none of the others that differ from it. */
export function finerFor(name: string, value: unknown, others: unknown[]): number {
  const numbers = others.filter((one) => typeof one === "number");
  return typeof value === "number" ? finerToTellApart(name, value, numbers, reader.value.units) : 0;
}

/** Sides of something with their unit once: formatSides(0.42, 0.298) → "420 × 298 mm". */
export function formatSides(...sides_m: number[]): string {
  const figures = sides_m.map((side) => figure("length_m", side));
  const last = figures.at(-1);
  if (!last || figures.some((one) => one.unit !== last.unit)) return sides_m.map((side) => format("length_m", side)).join(" × ");
  return withUnit(figures.map((one) => one.text).join(" × "), last.unit);
}

/** A range with its unit once: formatRange("window_c", 71, 77) → "71–77 °C"; `inward`: rounded to what lies in it. */
export function formatRange(name: string, low: number, high: number, inward = 0, finer = 0): string {
  const bottom = figure(name, low, undefined, finer, inward);
  const top = figure(name, high, undefined, finer, -inward);
  // Figures that bring their units with them (1 min 40 s, 2 lb 8 oz) stand apart.
  const withTheirUnits = bottom.unit === "" && dimensionOf(name) !== "";
  if (bottom.unit !== top.unit || withTheirUnits) return `${withUnit(bottom.text, bottom.unit)} – ${withUnit(top.text, top.unit)}`;
  if (bottom.text === top.text) return withUnit(top.text, top.unit);
  return `${bottom.text}–${withUnit(top.text, top.unit)}`;
}
