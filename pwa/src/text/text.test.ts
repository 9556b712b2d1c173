// @vitest-environment node
import { beforeEach, describe, expect, test } from "vitest";

import type { Units } from "../documents";
import {
  dimensionOf,
  editable,
  format,
  formatCountdown,
  formatDay,
  formatDuration,
  formatRange,
  formatTime,
  loadLanguage,
  parse,
  problemText,
  reader,
  t,
} from ".";
import { METRIC } from "./reader";

const IMPERIAL: Units = { mass: "lb", length: "in", temperature: "°F", power: "W" };
const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, " ");

beforeEach(() => {
  reader.value = { language: "en", units: METRIC };
});

describe("format", () => {
  test("the suffix of a name says what it measures", () => {
    expect(dimensionOf("piece_length_m")).toBe("length");
    expect(dimensionOf("kg")).toBe("mass");
    expect(dimensionOf("due_ms")).toBe("instant");
    expect(dimensionOf("poured_at_ms")).toBe("instant");
    expect(dimensionOf("pieces")).toBe("");
  });

  test("values are shown in the reader's units", () => {
    expect(plain(format("caramel_kg", 1.134))).toBe("1.13 kg");
    expect(plain(format("piece_kg", 0.01434))).toBe("14.3 g");
    expect(plain(format("slab_height_m", 0.0127))).toBe("12.7 mm");
    expect(plain(format("length_m", 0.4198))).toBe("420 mm");
    expect(plain(format("surface_c", 73.2))).toBe("73 °C");
    reader.value = { language: "en", units: IMPERIAL };
    expect(plain(format("caramel_kg", 1.13398))).toBe("2.5 lb");
    expect(plain(format("slab_height_m", 0.0127))).toBe("0.5 in");
    expect(plain(format("limit_c", 93.3))).toBe("200 °F");
    // A difference has no zero point: 5 K are 9 °F, not 41.
    expect(plain(format("spread_k", 5))).toBe("9 °F");
  });

  test("a tiny negative is not shown as minus zero", () => {
    expect(plain(format("bulk_c", -0.2))).toBe("0 °C");
  });

  test("durations fit a glance", () => {
    expect([45, 60, 100, 125, 2820, 6000, 7200].map(formatDuration).map(plain)).toEqual([
      "45 s",
      "60 s",
      "1 min 40 s",
      "2 min 5 s",
      "47 min",
      "1 h 40 min",
      "2 h",
    ]);
  });

  test("a countdown shows the second that is running, never less than nothing", () => {
    expect(formatCountdown(59_001)).toEqual({ text: "1:00", unit: "" });
    expect(formatCountdown(59_000)).toEqual({ text: "0:59", unit: "" });
    expect(formatCountdown(-5_000)).toEqual({ text: "0:00", unit: "" });
    expect(formatCountdown(47 * 60_000)).toEqual({ text: "47", unit: "min" });
    expect(formatCountdown(112 * 60_000)).toEqual({ text: "1:52", unit: "h" });
  });

  test("a range carries its unit once", () => {
    expect(plain(formatRange("window_c", 71, 77))).toBe("71–77 °C");
    expect(plain(formatRange("window_c", 71.1, 71.2))).toBe("71 °C");
  });
});

describe("parse", () => {
  const value = (name: string, text: string, unit?: string) => parse(name, text, unit).value;

  test("a bare number is in the reader's unit", () => {
    expect(value("mass_kg", "1.8")).toBeCloseTo(1.8, 12);
    expect(value("slab_height_m", "10")).toBeCloseTo(0.01, 12);
    expect(value("surface_c", "160", "°F")).toBeCloseTo(71.111, 3);
  });

  test("a unit may be typed, in other spellings too", () => {
    expect(value("mass_kg", "2.5 lb")).toBeCloseTo(1.133980925, 9);
    expect(value("mass_kg", "2.5 Pounds")).toBeCloseTo(1.133980925, 9);
    expect(value("slab_height_m", '1/2"')).toBeCloseTo(0.0127, 12);
    expect(value("slab_height_m", "1 1/2 in")).toBeCloseTo(0.0381, 12);
    expect(value("mass_kg", "2 lb 8 oz")).toBeCloseTo(1.133980925, 9);
    expect(value("start_c", "-4 °F")).toBeCloseTo(-20, 9);
    expect(value("seconds_s", "1:30")).toBe(90);
    expect(value("seconds_s", "1 h 5 min")).toBe(3900);
  });

  test("decimal comma and thousands are told apart", () => {
    expect(value("mass_kg", "2,5")).toBeCloseTo(2.5, 12);
    expect(value("mass_kg", "1,250 g")).toBeCloseTo(1.25, 12);
    expect(value("mass_kg", "1,250.5 g")).toBeCloseTo(1.2505, 12);
  });

  test("in Spanish a comma and a scale's point both part the whole from the rest", () => {
    reader.value = { language: "es", units: METRIC };
    expect(value("mass_kg", "2,5")).toBeCloseTo(2.5, 12);
    expect(value("mass_kg", "1.250")).toBeCloseTo(1.25, 12);
    expect(value("mass_kg", "12.500,5 g")).toBeCloseTo(12.5005, 12);
    expect(value("mass_kg", "2 libras 8 onzas")).toBeCloseTo(1.133980925, 9);
    expect(value("slab_height_m", "1/2 pulgada")).toBeCloseTo(0.0127, 12);
    expect(parse("mass_kg", "1.2.3").problem?.code).toBe("not_a_quantity");
  });

  test("nothing typed is no fault", () => {
    expect(parse("mass_kg", "  ")).toEqual({ value: null, problem: null });
  });

  test.each([
    ["mass_kg", "2.5 in", "wrong_unit"],
    ["mass_kg", "2 stone", "unknown_unit"],
    ["mass_kg", "two", "not_a_quantity"],
    ["mass_kg", "1/0", "not_a_quantity"],
    ["mass_kg", "1.2.3", "not_a_quantity"],
    ["mass_kg", "2*3", "unknown_unit"],
    ["mass_kg", "1 200", "not_a_quantity"],
    ["mass_kg", "NaN", "not_a_quantity"],
    ["mass_kg", "1e400", "unknown_unit"],
    ["surface_c", "70 5", "not_a_quantity"],
    ["pieces", "12 kg", "not_a_number"],
  ])("%s does not take %s: %s", (name, text, code) => {
    expect(parse(name, text).problem?.code).toBe(code);
  });

  test("what is shown for editing reads back to the same value, in every unit", () => {
    for (const units of [METRIC, IMPERIAL, { ...METRIC, mass: "g", length: "cm" } as Units])
      for (const language of ["en", "es"])
        for (const [name, si] of [
          ["caramel_kg", 1.134],
          ["slab_height_m", 0.0127],
          ["surface_c", 73.4],
          ["rated_w", 1100],
        ] as const) {
          reader.value = { language, units };
          expect(value(name, editable(name, si)), `${name} ${language}`).toBeCloseTo(si, 5);
        }
  });
});

describe("Spanish", () => {
  beforeEach(async () => {
    await loadLanguage("es");
    reader.value = { language: "es", units: METRIC };
  });

  test("numbers have a decimal comma, and never a point that could be taken for one", () => {
    expect(plain(format("caramel_kg", 1.134))).toBe("1,13 kg");
    expect(plain(format("pieces", 12_500))).toBe("12 500");
    expect(parse("pieces", format("pieces", 12_500)).value).toBe(12_500);
    expect(plain(formatDuration(6000))).toBe("1 h 40 min");
  });

  test("days and times are Spanish", () => {
    const noon = new Date(2026, 2, 4, 15, 40).getTime();
    expect(formatTime(noon)).toBe("15:40");
    expect(formatDay(noon)).toMatch(/^mié/);
  });

  test("plural forms follow n", () => {
    expect(t("more.closed", { n: 1 })).toContain("1 pieza buena.");
    expect(t("more.closed", { n: 0 })).toContain("0 piezas buenas.");
    expect(t("more.closed", { n: 1_000_000 })).toContain("piezas buenas.");
  });

  test("a problem speaks Spanish, its figures too", () => {
    const problem = { field: "have.kg", code: "too_high", given: 900.5, low: 0.1, high: 50, unit: "kg", accepted: null };
    expect(plain(problemText({ ...problem, message: "" }))).toBe(
      "caramelo disponible: 900,5 kg es demasiado. Se admite: de 0,1 kg a 50 kg.",
    );
  });
});

describe("sentences", () => {
  test("a key nobody has is shown as it is", () => {
    expect(t("no.such.key")).toBe("no.such.key");
  });

  test("plural forms follow n", () => {
    expect(t("more.closed", { n: 1 })).toContain("1 good piece.");
    expect(t("more.closed", { n: 63 })).toContain("63 good pieces.");
  });

  test("a problem names its limits in the reader's units", () => {
    reader.value = { language: "en", units: IMPERIAL };
    const problem = { field: "surface_c", code: "too_high", given: 426.7, low: 0, high: 150, unit: "°C", accepted: null };
    const text = plain(problemText({ ...problem, message: "" }));
    expect(text).toContain("800 °F");
    expect(text).toContain("302 °F");
  });
});
