import { locale } from "./reader";

const made = new Map<string, Intl.NumberFormat>();

/** The reader's way to write numbers. Making one costs as much as a hundred uses, so each is made once. */
export function numberFormat(options: Intl.NumberFormatOptions = {}): Intl.NumberFormat {
  const key = `${locale()} ${JSON.stringify(options)}`;
  const known = made.get(key);
  if (known) return known;
  const fresh = new Intl.NumberFormat(locale(), options);
  made.set(key, fresh);
  return fresh;
}
