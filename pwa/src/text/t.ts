import type { ProblemDocument, Values } from "../documents";
import { type Sentence, sentence } from "./catalogue";
import { withUnit } from "./figures";
import { finerFor, format } from "./format";
import { locale, reader } from "./reader";
import { dimensionOf, SUFFIX_OF } from "./units";

/** What stands as a list in words, and how one of it is said. */
const LISTED: Record<string, (one: unknown) => string> = {
  allergens: (one) => t(`allergen.${String(one)}`),
  each: (one) => t("more.each", { ...(one as Values), word: word((one as Values)["material"]) }),
  sizes: (one) => t("more.size", one as Values),
  materials: (one) => t(`word.${String(one)}`),
  after: String,
  names: String,
};

/** The sentence of a key in the reader's language, its placeholders filled in the reader's units.
 * A key nobody has comes back as it is, so that a gap is seen. */
export function t(key: string, values: Values = {}): string {
  const found = sentence(key, reader.value.language);
  if (found === undefined) return key;
  return filled(chosen(found, values), values);
}

/** A sentence as it stands in a language whose texts are loaded, for what is printed in another than the reader's. */
export function textIn(language: string, key: string): string {
  const found = sentence(key, language);
  return typeof found === "string" ? found : key;
}

/** Whether there is a sentence for a key. */
export function hasText(key: string): boolean {
  return sentence(key, reader.value.language) !== undefined;
}

function chosen(found: Sentence, values: Values): string {
  if (typeof found === "string") return found;
  const n = Number(values["n"] ?? 0);
  return found[new Intl.PluralRules(locale()).select(n)] ?? found.other ?? "";
}

/** "at 3:40 p.m." ends with the point it has. */
function filled(text: string, values: Values): string {
  return text.replace(/\{(\w+)\}(\.?)/g, (whole, name: string, point: string) => {
    if (!(name in values)) return whole;
    const value = shown(name, values[name]);
    return value.endsWith(".") ? value : value + point;
  });
}

/** A value as it stands in a sentence. */
function shown(name: string, value: unknown): string {
  const said = LISTED[name];
  return said && Array.isArray(value) ? new Intl.ListFormat(locale()).format(value.map((one) => said(one))) : format(name, value);
}

/** A problem as a plain sentence: field, value and what is accepted, in the reader's units. */
export function problemText(problem: ProblemDocument, label?: string): string {
  const { given, low, high } = problem;
  const [name, unit] = measuredAs(problem.field, problem.unit ?? "");
  const finer = finerFor(name, given, [low, high]);
  // A limit is rounded to the side that is accepted, so that it may be typed as it reads.
  const shown = (value: unknown, toward = 0) => (value == null ? "" : withUnit(format(name, value, undefined, finer, toward), typeof value === "number" ? unit : ""));
  return t(`problem.${problem.code}`, {
    field: fieldName(problem.field, label),
    given: shown(given),
    low: shown(low, 1),
    high: shown(high, -1),
    unit: problem.unit ?? "",
    accepted: (problem.accepted ?? []).map(word).join(", "),
  });
}

/** The name that says what the values of a problem measure, and the unit to write behind them where no name does. */
function measuredAs(field: string, unit: string): [name: string, unit: string] {
  const whole = field.replace(/\[\d+\]/g, "").replaceAll(".", "_");
  const last = field.split(".").at(-1)?.replace(/\[\d+\]$/, "") ?? "";
  const name = dimensionOf(whole) ? whole : last;
  const suffix = SUFFIX_OF[unit];
  // "These seconds give 5000 W": what is shown is not what the field measures.
  if (suffix) return [dimensionOf(name) === dimensionOf(suffix) ? name : suffix, ""];
  return [name, dimensionOf(name) ? "" : unit];
}

/** The screen name of a field: text `field.<path>` without the places in lists, else `field.<last part>`, else what stands at it, else the bare words. */
export function fieldName(path: string, label?: string): string {
  const bare = path.replace(/\[\d+\]/g, "");
  const last = bare.split(".").at(-1) ?? bare;
  for (const key of [`field.${bare}`, `field.${last}`]) if (hasText(key)) return t(key);
  return label ?? last.replace(/_(kg|m|m2|c|k|s|w)$/, "").replaceAll("_", " ");
}

function word(one: unknown): string {
  const key = `word.${String(one)}`;
  return hasText(key) ? t(key) : String(one);
}
