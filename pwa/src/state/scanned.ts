/** What a code that was scanned says of a lot or of boxes. */

export interface Scanned {
  /** The lot as its label has it. */
  lot: string;
  /** "2027-03-31"; "": it says none. */
  bestBy: string;
}

/** Ends a group of varying length in a GS1 element string (GS1 General Specifications). */
const GROUP_END = "\u001D";
/** GS1 application identifiers of fixed length that may stand before the lot: figures behind them. 01 and 02 are item numbers, 11 to 17
 * days, 20 a variant (GS1 General Specifications). */
const FIXED: Record<string, number> = { "01": 14, "02": 14, "11": 6, "12": 6, "13": 6, "15": 6, "16": 6, "17": 6, "20": 2 };

/** Reads "LOT:<code>" of our own labels, a GS1 element string with a lot (10) and perhaps a day (15 best before, 17 use by), or else
 * the text as it stands. */
export function scanned(text: string): Scanned {
  const own = /^LOT:(.+)$/.exec(text.trim());
  if (own) return { lot: own[1]!, bestBy: "" };
  return ofGs1(text.replace(/^\](?:C1|d2|Q3|e0)/, "").replace(new RegExp(`^${GROUP_END}`), "")) ?? { lot: text.trim(), bestBy: "" };
}

function ofGs1(text: string): Scanned | null {
  const said = new Map<string, string>();
  for (let at = 0; at < text.length; ) {
    const name = text.slice(at, at + 2);
    const fixed = FIXED[name];
    if (fixed === undefined && name !== "10" && name !== "21") return said.has("10") ? result(said) : null;
    const end = text.indexOf(GROUP_END, at);
    const next = fixed !== undefined ? at + 2 + fixed : end < 0 ? text.length : end;
    const value = text.slice(at + 2, next);
    if (fixed !== undefined && !new RegExp(`^\\d{${fixed}}$`).test(value)) return null;
    said.set(name, value);
    at = text[next] === GROUP_END ? next + 1 : next;
  }
  return said.get("10") ? result(said) : null;
}

function result(said: Map<string, string>): Scanned {
  const day = said.get("15") ?? said.get("17");
  return { lot: said.get("10") ?? "", bestBy: day ? dayOf(day) : "" };
}

/** Six figures YYMMDD; 00 for the day is the last of its month. */
function dayOf(figures: string): string {
  const [year, month, day] = [Number(figures.slice(0, 2)), Number(figures.slice(2, 4)), Number(figures.slice(4))];
  // Of a century a label means the one near it; here the first half of figures is of this one (GS1 moves it year by year).
  const full = year > 80 ? 1900 + year : 2000 + year;
  const last = new Date(Date.UTC(full, month, 0)).getUTCDate();
  if (month < 1 || month > 12 || day > last) return "";
  return `${full}-${figures.slice(2, 4)}-${String(day || last).padStart(2, "0")}`;
}
