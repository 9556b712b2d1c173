import { computed, signal } from "@preact/signals";

import type { Shop, Units } from "../documents";
import type { Store } from "../storage";
import { languages, loadLanguage, METRIC, reader, spokenHere } from "../text";
import { wholeShop } from "./shopBook";
import type { Settings } from "./types";

/** The shop document; null until it was fetched once or read from the phone. */
export const shop = signal<Shop | null>(null);

const FIRST: Settings = { language: "", units: null, theme: "auto", spoken: false, heard_at_ms: null };

/** What this device's reader has chosen. */
export const settings = signal<Settings>(FIRST);

/** The units in force: the reader's own, else the shop's. */
export const units = computed<Units>(() => settings.value.units ?? shop.value?.units ?? METRIC);

/** The language in force: the reader's own, else the shop's. */
const language = computed<string>(() => settings.value.language || languageOf(shop.value));

/** The language of a shop: the one somebody chose for it, else the one this device is used in. */
export function languageOf(known: Shop | null): string {
  return known && isSaid(known, "language") ? known.language : spokenHere();
}

function isSaid({ basis }: Shop, field: keyof Shop): boolean {
  return `shop.${field}` in basis;
}

/** Reads shop and settings from the phone, and has the texts follow them from now on. */
export async function loadShop(store: Store): Promise<void> {
  const [known, chosen] = await Promise.all([store.meta.get<Shop>("shop"), store.meta.get<Settings>("settings")]);
  if (known) shop.value = wholeShop(known);
  if (chosen) settings.value = { ...FIRST, ...chosen };
  follow();
  language.subscribe(follow);
  units.subscribe(follow);
}

function follow(): void {
  const wanted = languages.includes(language.value) ? language.value : "en";
  reader.value = { language: wanted, units: units.value };
  void loadLanguage(wanted).catch(() => {});
}

/** What is chosen now. */
export function takeSettings(change: Partial<Settings>): Settings {
  settings.value = { ...settings.value, ...change };
  return settings.value;
}
