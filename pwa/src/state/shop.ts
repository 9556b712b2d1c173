import { computed, signal } from "@preact/signals";

import type { Shop, Units, Values } from "../documents";
import type { Store } from "../storage";
import { hasTexts, languages, loadLanguage, METRIC, reader, spokenHere } from "../text";
import { wholeShop } from "./shopBook";
import type { Settings } from "./types";

/** The shop document; null until it was fetched once or read from the phone. */
export const shop = signal<Shop | null>(null);

const FIRST: Settings = { language: "", units: null, theme: "auto", spoken: false, heard_at_ms: null, person_id: null };

/** What this device's reader has chosen. */
export const settings = signal<Settings>(FIRST);

/** The person at this phone; undefined: nobody in particular, or a row that was taken away. */
export const personHere = computed(() => shop.value?.people.find((row) => row.id === settings.value.person_id));

/** What somebody's tap writes, with the person who is at this phone. */
export function byWhom(body: Values): Values {
  return personHere.value ? { ...body, by: personHere.value.id } : body;
}

/** The units in force: the reader's own, else the shop's. */
export const units = computed<Units>(() => settings.value.units ?? shop.value?.units ?? METRIC);

/** The language in force: the reader's own, else the shop's; that of this device where there are no texts for it. */
const language = computed<string>(() => {
  const wanted = settings.value.language || languageOf(shop.value);
  return languages.includes(wanted) ? wanted : spokenHere();
});

/** Texts that did not come are asked for again after this (ms). */
const AGAIN_MS = 2_000;

/** The language of a shop: the one somebody chose for it, else the one this device is used in. What a shop begins with is
 * assumed: an invented shop speaks to nobody in a language of its own. */
export function languageOf(known: Shop | null): string {
  return known?.basis["shop.language"] === "typed" ? known.language : spokenHere();
}

/** The language somebody chose whose texts are not on this phone yet, and not to be had now; "": none. */
export const missingLanguage = signal("");

/** Reads shop and settings from the phone, and has the texts follow them from now on. */
export async function loadShop(store: Store): Promise<void> {
  const [known, chosen] = await Promise.all([store.meta.get<Shop>("shop"), store.meta.get<Settings>("settings")]);
  if (known) shop.value = wholeShop(known);
  if (chosen) settings.value = { ...FIRST, ...chosen };
  language.subscribe(() => void follow());
  units.subscribe((chosen) => {
    reader.value = { ...reader.value, units: chosen };
  });
}

/** The reader's language changes only once its texts are here. */
async function follow(): Promise<void> {
  const wanted = language.value;
  const here = await isHere(wanted);
  if (wanted !== language.value) return;
  missingLanguage.value = here ? "" : wanted;
  if (here) reader.value = { ...reader.value, language: wanted };
  else setTimeout(() => void follow(), AGAIN_MS);
}

/** Whether the texts of a language are loaded, now that they were asked for. */
function isHere(wanted: string): Promise<boolean> {
  return loadLanguage(wanted).then(() => true, () => false);
}

/** Resolves once there are texts to read. Where none are to be had, on a first visit, it goes on asking. */
export async function firstTexts(): Promise<void> {
  for (;;) {
    for (const one of [spokenHere(), ...languages]) {
      const here = await isHere(one);
      if (hasTexts(reader.value.language)) return;
      if (here) {
        reader.value = { ...reader.value, language: one };
        return;
      }
    }
    await new Promise((done) => setTimeout(done, AGAIN_MS));
  }
}

/** What is chosen now. */
export function takeSettings(change: Partial<Settings>): Settings {
  settings.value = { ...settings.value, ...change };
  return settings.value;
}
