import { fault, type Parsed } from "./parse";
import { locale } from "./reader";

/** Decimals of a currency's smallest coin. */
function decimalsOf(currency: string): number {
  try {
    return new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits ?? 2;
  } catch {
    return 2;
  }
}

/** Money as the reader writes it: formatMoney(1250, "EUR") → "€12.50". Without a currency, the bare figure. */
export function formatMoney(minor: number, currency: string): string {
  const value = minor / 10 ** decimalsOf(currency);
  try {
    return new Intl.NumberFormat(locale(), { style: "currency", currency }).format(value);
  } catch {
    return new Intl.NumberFormat(locale(), { minimumFractionDigits: 2, maximumFractionDigits: 2 }).format(value);
  }
}

/** The same as it stands in a field: "12.50"; "" for none. */
export function moneyTyped(minor: number | null, currency: string): string {
  if (minor === null) return "";
  const decimals = decimalsOf(currency);
  const figure = new Intl.NumberFormat(locale(), { minimumFractionDigits: decimals, maximumFractionDigits: decimals, useGrouping: false });
  return figure.format(minor / 10 ** decimals);
}

/** What was typed, in the smallest coin. A point and a comma both part the small coins; nothing else may stand between
 * the digits. */
export function parseMoney(name: string, words: string, currency: string): Parsed {
  if (words.trim() === "") return { value: null, problem: null };
  const bare = words.replace(/[\s\u00a0\u202f]/g, "").replace(/^[^\d.,-]+|[^\d.,]+$/g, "");
  const decimals = decimalsOf(currency);
  const found = /^(-?\d+)(?:[.,](\d*))?$/.exec(bare);
  const small = found?.[2] ?? "";
  if (!found || small.length > decimals) return fault(name, "not_money", words, "", [moneyTyped(1250, currency)]);
  return { value: Number(found[1] + small.padEnd(decimals, "0")), problem: null };
}
