// @vitest-environment node
import { beforeEach, describe, expect, test, vi } from "vitest";

import examples from "../../../tests/figures.json";
import type { Units } from "../documents";
import { finerToTellApart, withUnit, written } from "./figures";
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
import { UNITS, unitFor } from "./units";

const IMPERIAL: Units = { mass: "lb", length: "in", temperature: "°F", power: "W" };
const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, " ");

beforeEach(async () => {
  await loadLanguage("en");
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

  const UNITS = examples.units as Record<string, Units>;
  const spaced = (text: string) => text.replaceAll("_", "\u202f").replaceAll("~", "\u00a0");
  const shown = (name: string, value: number, language: string, units: string, finer = 0) => {
    const { text, unit } = written(name, value, UNITS[units] as Units, language, finer);
    return withUnit(text, unit);
  };

  test.each(examples.figures as [string, number, string, string, string][])("%s %s (%s, %s) is written %s", (name, value, language, units, text) => {
    expect(shown(name, value, language, units)).toBe(spaced(text));
  });

  test.each(examples.told_apart as [string, number, number, string, string, string][])(
    "%s %s never reads like its limit %s (%s)",
    (name, value, limit, units, given, accepted) => {
      const finer = finerToTellApart(name, value, [limit], UNITS[units] as Units);
      expect([shown(name, value, "en", units, finer), shown(name, limit, "en", units, finer)]).toEqual([spaced(given), spaced(accepted)]);
    },
  );

  test.each(examples.limits as [string, number, number, string, string][])("%s of %s, accepted towards %s (%s), reads %s", (name, value, toward, units, text) => {
    const { text: digits, unit } = written(name, value, UNITS[units] as Units, "en", 0, toward);
    expect(withUnit(digits, unit)).toBe(spaced(text));
  });

  test("what is shown is in the reader's units", () => {
    expect(plain(format("caramel_kg", 1.134))).toBe("1.13 kg");
    expect(plain(formatDuration(6000))).toBe("1 h 40 min");
    reader.value = { language: "en", units: IMPERIAL };
    expect(plain(format("caramel_kg", 1.134))).toBe("2 lb 8 oz");
    expect(plain(format("bars_m", [0.0127, 0.01905]))).toBe("1/2 in, 3/4 in");
  });

  test("what is no number is shown too", () => {
    expect(format("mass_kg", null)).toBe("–");
    expect(format("mass_kg", Number.NaN)).toBe("–");
    expect(plain(format("mass_kg", Number.POSITIVE_INFINITY))).toBe("∞ kg");
    expect(format("base", "marble")).toBe("marble");
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
    expect(plain(formatRange("pieces", 36, 40))).toBe("36–40");
    expect(plain(formatRange("pieces", 36, 36))).toBe("36");
    expect(plain(formatRange("time_s", 100, 595))).toBe("1 min 40 s – 9 min 55 s");
    reader.value = { language: "en", units: IMPERIAL };
    expect(plain(formatRange("mass_kg", 1.134, 1.2))).toBe("2 lb 8 oz – 2 lb 10 oz");
    expect(plain(formatRange("length_m", 0.0127, 0.0381))).toBe("1/2–1 1/2 in");
  });

  test("an hour has no leading nought, in whatever way the browser pads it", () => {
    const padded = [
      { type: "hour", value: "05" },
      { type: "literal", value: ":" },
      { type: "minute", value: "07" },
    ] as Intl.DateTimeFormatPart[];
    const spy = vi.spyOn(Intl.DateTimeFormat.prototype, "formatToParts").mockReturnValue(padded);
    expect(formatTime(0)).toBe("5:07");
    spy.mockRestore();
    expect(formatTime(new Date(2026, 2, 4, 5, 7).getTime())).toMatch(/^5:07/);
    expect(formatTime(new Date(2026, 2, 4, 15, 40).getTime())).toMatch(/^(15:40|3:40.PM)$/i);
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

  test("what is shown reads back, fractions and pounds with ounces too", () => {
    reader.value = { language: "en", units: IMPERIAL };
    for (const [name, si] of [["caramel_kg", 1.133980925], ["length_m", 0.0333375], ["slab_height_m", 0.0127], ["volume_m3", 0.000946352946], ["start_c", -20]] as const)
      expect(value(name, format(name, si)), format(name, si)).toBeCloseTo(si, 9);
  });

  test("fields show round figures, not the noise of a conversion", () => {
    reader.value = { language: "en", units: IMPERIAL };
    expect(editable("caramel_kg", 1.8)).toBe("3.97");
    expect(editable("limit_c", 93.3)).toBe("199.9");
    expect(editable("window_low_c", 71.11111)).toBe("160");
    expect(editable("slab_height_m", 0.0127)).toBe("1/2");
    expect(editable("bar_length_m", 0.3937)).toBe("15\u00a01/2");
    expect(editable("slab_height_m", 0.013)).toBe("0.512");
    expect(editable("deposit_kg", 0.0145, "g")).toBe("14.5");
    expect(editable("pieces", 12_500)).toBe("12500");
    expect(editable("conductivity_w_mk", 0.387_654_321)).toBe("0.387654");
  });

  test("what is shown for editing reads back to what its unit can be typed in, in every unit", () => {
    for (const units of [METRIC, IMPERIAL, { ...METRIC, mass: "g", length: "cm" } as Units])
      for (const language of ["en", "es"])
        for (const [name, si] of [
          ["caramel_kg", 1.134],
          ["slab_height_m", 0.0127],
          ["surface_c", 73.4],
          ["rated_w", 1100],
        ] as const) {
          reader.value = { language, units };
          const { factor, typed } = UNITS[unitFor(dimensionOf(name), units)] as { factor: number; typed: number };
          const back = value(name, editable(name, si)) as number;
          expect(Math.abs(back - si), `${name} ${language}`).toBeLessThanOrEqual(0.5000001 * factor * 10 ** -typed);
        }
  });
});

test("what writes days and times is made once, not for each of a list's thousand lines", () => {
  const { DateTimeFormat } = Intl;
  let made = 0;
  const counted = vi.spyOn(Intl, "DateTimeFormat").mockImplementation(function (...given) {
    made += 1;
    return new DateTimeFormat(...given);
  });
  const days = Array.from({ length: 1000 }, (_, n) => formatDay(new Date(2031, 0, 1, 9, n).getTime()));
  expect(new Set(days).size).toBe(1000);
  expect(made).toBeLessThanOrEqual(1);
  counted.mockRestore();
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
      "caramelo disponible: 900,5 kg es demasiado. Se admite: de 100 g a 50 kg.",
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
