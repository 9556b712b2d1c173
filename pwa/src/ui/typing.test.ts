import { beforeEach, expect, test } from "vitest";

import type { Entry, TextEntry } from "../documents";
import { loadLanguage, METRIC, reader } from "../text";
import { bandWords, outOfRangeMessage, pressed, typedValue } from "./typing";

const shown = { last: null, likely_low: null, likely_high: null, band_low: null, band_high: null, body: {} };
const READING: Entry = { kind: "read", field: "surface_c", name: "surface_c", low: 0, high: 150, ...shown, band_low: 71, band_high: 77 };
const WEIGHT: Entry = { kind: "weighed", field: "kg", name: "caramel_kg", low: 0.05, high: 10, ...shown };
const COUNT: Entry = { kind: "counted", field: "pieces", name: "pieces", low: 0, high: 100000, ...shown };
const LOT: TextEntry = { kind: "lot_named", field: "lot", name: "lot", low: null, high: null, ...shown };

function typed(keys: string, entry: Entry | TextEntry): string {
  return [...keys].reduce((text, key) => pressed(text, key, entry), "");
}

beforeEach(async () => {
  await loadLanguage("en");
  reader.value = { language: "en", units: METRIC };
});

test("digits are taken one after the other", () => {
  expect(typedValue(typed("73", READING), READING)).toBe(73);
});

test("a second decimal mark changes nothing", () => {
  expect(typed("1.8.25", WEIGHT)).toBe("1.825");
});

test("a leading nought gives way to the next digit", () => {
  expect(typed("073", READING)).toBe("73");
});

test("a number half typed with its mark last can be sent", () => {
  expect(typedValue("2.", WEIGHT)).toBe(2);
});

test("a reading in the reader's unit is sent in degrees Celsius", () => {
  reader.value = { language: "en", units: { ...METRIC, temperature: "°F" } };
  expect(typedValue("165", READING)).toBeCloseTo(73.889, 3);
});

test("a reading of 800 °F is questioned", () => {
  reader.value = { language: "en", units: { ...METRIC, temperature: "°F" } };
  expect(outOfRangeMessage(typedValue("800", READING), READING)).toContain("800");
});

test("a reading at the very limit is not questioned", () => {
  expect(outOfRangeMessage(150, READING)).toBeNull();
});

test("a lot keeps its leading nought and its dash", () => {
  expect(typedValue(typed("07-12", LOT), LOT)).toBe("07-12");
});

test("nothing typed is nothing to send", () => {
  expect(typedValue("", COUNT)).toBeNull();
});

test("below, in and over the window read differently", () => {
  const words = [70, 74, 78].map((value) => bandWords(value, READING));
  expect(new Set(words).size).toBe(3);
  expect(words).not.toContain("");
});

test("180 °F is in a window that ends at 180 °F, wherever its limit was set in °C", () => {
  reader.value = { language: "en", units: { ...METRIC, temperature: "°F" } };
  const window = { ...READING, band_low: 71, band_high: 82 };
  expect([160, 180, 181].map((typed) => bandWords(typedValue(String(typed), window), window))).toEqual(["in the window", "in the window", "over the window"]);
});

test("a range is said so that its ends are accepted as they read", () => {
  reader.value = { language: "en", units: { ...METRIC, temperature: "°F" } };
  const read = { ...READING, low: 9, high: 149.5 };
  const range = /(\d+)–(\d+)/.exec(outOfRangeMessage(typedValue("302", read), read) as string) as string[];
  expect(range.slice(1)).toEqual(["49", "301"]);
  expect(range.slice(1).map((one) => outOfRangeMessage(typedValue(one, read), read))).toEqual([null, null]);
});

test("a count or a weight that surprises is said to", () => {
  const counted = { ...COUNT, likely_low: 173, likely_high: 192 };
  expect(bandWords(250, counted)).toBe("more than expected");
  expect(bandWords(120, counted)).toBe("less than expected");
  expect(bandWords(180, counted)).toBe("");
});

test("without a window there is nothing to say about it", () => {
  expect(bandWords(198, COUNT)).toBe("");
});
