import type { LabelContentReply, LabelContentRequest } from "../documents";
import type { Run } from "./flow";
import type { Floors, LabelText } from "./label";
import { NO_BREAK } from "./letters";

type Allergen = NonNullable<LabelContentRequest["words"]>[number]["allergen"];

/** A language of a label, and what it says for a key. */
export interface Language {
  locale: string;
  says: (key: string) => string;
}

/** US: 1/16 in, on the lower-case o (21 CFR 101.2(c)). EU: 1.2 mm, and 0.9 mm where the largest face is below 80 cm² (article 13 of
 * Regulation (EU) No 1169/2011; the 80 cm² from memory). */
const LEAST_US = 25.4 / 16;
const [LEAST_EU, LEAST_EU_SMALL] = [1.2, 0.9];
const SMALL_FACE_M2 = 0.008;

/** How small a label's letters may be by its rule. */
export function floorsOf(rule: "us" | "eu" | "uk", net: LabelContentReply["net"], face_m2: number | null): Floors {
  const isUs = rule === "us";
  const least = isUs ? LEAST_US : face_m2 !== null && face_m2 < SMALL_FACE_M2 ? LEAST_EU_SMALL : LEAST_EU;
  return { xHeight: least, netHeight: (net?.letter_m ?? 0) * 1000, netStandsFree: isUs };
}

/** What allergens are called on a label, so that they are found in lists of ingredients. */
export function allergenWords(allergens: Allergen[], languages: Language[]): LabelContentRequest["words"] {
  return allergens.map((allergen) => {
    const key = `labels.words.${allergen}`;
    return { allergen, words: languages.flatMap(({ says }) => says(key).split(", ")) };
  });
}

/** What a label says, in one language or in two: what the engine found in each, with the list of ingredients in that language. */
export function labelText(contents: LabelContentReply[], rule: "us" | "eu" | "uk", languages: Language[], saysMade = false): LabelText {
  const content = contents[0] as LabelContentReply;
  const all = (key: string) => [...new Set(languages.map(({ says }) => says(key)))].join(" / ");
  const list = (key: string, allergens: string[]) =>
    allergens.length === 0
      ? []
      : languages.map(({ locale, says }): Run[] => {
          const said = allergens.map((one) => says(`allergen.${one}`));
          return [strong(`${says(key)}: `), plain(`${new Intl.ListFormat(locale).format(said)}.`)];
        });
  const runs = contents.map(({ ingredients }) => ingredients.map(({ text, is_strong }) => ({ text, bold: is_strong })));
  const differ = new Set(runs.map((one) => one.map(({ text }) => text).join(""))).size > 1;
  const lists = differ ? runs.map((one, i) => [strong(`${languages[i]?.says("labels.ingredients")}: `), ...one]) : [[strong(`${all("labels.ingredients")}: `), ...(runs[0] ?? [])]];
  const byRule = rule === "us" ? "us" : "eu";
  const day = (key: string, at: string | null) => at && [all(key), dayIn(languages, at, byRule)].join(" ");
  const lines = [
    content.code && [all("labels.lot"), content.code].join(" "),
    saysMade && day("labels.made_on", content.made_on),
    day(`labels.best_by_${byRule}`, content.best_by),
    ...content.address.split("\n").map((line) => line.trim()),
  ];
  return {
    name: content.name,
    paragraphs: [...lists, ...list("labels.contains", content.contains), ...list("labels.may_contain", content.may_contain)],
    lines: lines.filter(Boolean) as string[],
    net: netOf(content.net, byRule, all("labels.net_weight")),
    eMark: content.e_mark,
    code: content.code,
  };
}

/** "NET WT 1 LB 8 OZ (680 g)", in capitals: of small letters the lower-case o would be measured. EU: "680 g". */
function netOf(net: LabelContentReply["net"], rule: "us" | "eu", words: string): string {
  if (!net) return "";
  const grams = `${net.grams}${NO_BREAK}g`;
  if (rule === "eu") return grams;
  const pounds = net.pounds > 0 ? [`${net.pounds}${NO_BREAK}LB`] : [];
  const ounces = net.pounds === 0 || net.rest_ounces > 0 ? [`${net.pounds === 0 ? net.ounces : net.rest_ounces}${NO_BREAK}OZ`] : [];
  return `${words.toUpperCase()} ${[...pounds, ...ounces].join(" ")} (${grams})`;
}

/** A day with its month in letters: no figure can be taken for the month. */
function dayIn(languages: Language[], day: string, rule: "us" | "eu"): string {
  const said = languages.map(({ locale }) => new Intl.DateTimeFormat(locale === "en" ? (rule === "us" ? "en-US" : "en-GB") : locale, { day: "numeric", month: "short", year: "numeric", timeZone: "UTC" }).format(new Date(`${day}T00:00:00Z`)));
  return [...new Set(said)].join(" / ");
}

const strong = (text: string): Run => ({ text, bold: true });
const plain = (text: string): Run => ({ text, bold: false });
