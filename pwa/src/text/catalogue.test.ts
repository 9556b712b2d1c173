// @vitest-environment node
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";

import { inOrder, saidIn } from "../../build/texts";
import { format, formatTime, hasTexts, inLanguage, loadLanguage, loadPlaceTexts, parse, reader, spokenHere, t } from ".";
import { METRIC } from "./reader";

afterEach(() => vi.unstubAllGlobals());

function usedIn(...locales: string[]): void {
  vi.stubGlobal("navigator", { languages: locales });
}

test("texts travel in the order of the English keys, with a gap where a language lacks one", () => {
  expect(inOrder(["a", "b", "c"], { c: "tres", a: "uno" })).toBe('["uno",null,"tres"]');
});

test.each([
  [["es-MX", "en"], "es-MX"],
  [["es-419"], "es-MX"],
  [["es-US", "en-US"], "es-MX"],
  [["es-ES"], "es"],
  [["es-AR"], "es"],
  [["es"], "es"],
  [["de-DE", "es-ES", "en"], "es"],
  [["en-GB", "es"], "en"],
  [["de-DE"], "en"],
])("a phone used in %s reads %s", (locales, language) => {
  usedIn(...locales);
  expect(spokenHere()).toBe(language);
});

test("texts are here only once they were loaded, a variant with those of its language", async () => {
  expect(hasTexts("es-MX")).toBe(false);
  expect(t("button.stirred")).toBe("button.stirred");
  await loadLanguage("es-MX");
  expect([hasTexts("es-MX"), hasTexts("es"), hasTexts("en")]).toEqual([true, true, false]);
});

test("what places say comes when it is asked for, and from then on with each language", async () => {
  const read = (language: string) => {
    reader.value = { language, units: METRIC };
    return t("orders.all_packed");
  };
  await loadLanguage("es");
  expect(read("es")).toBe("orders.all_packed");
  await loadPlaceTexts();
  expect(read("es")).not.toBe("orders.all_packed");
  await loadLanguage("en");
  expect(read("en")).not.toBe("orders.all_packed");
});

test.each([
  ['t("orders.due_day")', ["orders.due_day"]],
  ["t(`orders.due_${when}`)", ["orders.due_day", "orders.due_week"]],
  ['t("orders." + what)', ["orders.due_day", "orders.due_week"]],
  ['call("orders.due")', []],
])("a file that has %s says %j", (code, said) => {
  expect(saidIn(code, ["orders.due_day", "orders.due_week", "stock.rest"])).toEqual(said);
});

test("a word is taken in the variant, else in its language, else not at all", () => {
  expect(inLanguage({ "es-MX": 1, es: 2 }, "es-MX")).toBe(1);
  expect(inLanguage({ es: 2 }, "es-MX")).toBe(2);
  expect(inLanguage({ es: 2 }, "en")).toBeUndefined();
});

describe("Mexican Spanish", () => {
  const plain = (text: string) => text.replaceAll(/[\u202f\u00a0]/g, " ");
  const reads = (language: string) => {
    reader.value = { language, units: METRIC };
  };
  beforeEach(async () => {
    await loadLanguage("es-MX");
    usedIn("es-MX");
    reads("es-MX");
  });

  test("says what it says otherwise in its own words, the rest in Spanish", () => {
    const mexican = [t("button.stirred"), t("button.read_slab"), t("shop.list.vessels"), t("caution.mitts"), t("button.not_heard"), t("button.cut")];
    expect(mexican.slice(0, 3)).toEqual(["Revuelto", "Medir la placa", "Tazones y jarras"]);
    expect(mexican.slice(3, 5)).toEqual(["Dos guantes de cocina secos para levantar el tazón. Si humea: puerta cerrada, apagar, desconectar.", "No lo oí"]);
    reads("es");
    expect(t("button.stirred")).toBe("Removido");
    expect(t("button.cut")).toBe(mexican[5]);
  });

  test("plural forms are in its words too", () => {
    expect(t("desk.cluster_reheats", { n: 2 })).toBe("El tazón se recalienta 2 veces.");
  });

  test("has a decimal point, and a comma between thousands", () => {
    expect(plain(format("caramel_kg", 1.134))).toBe("1.13 kg");
    expect(plain(format("pieces", 12_500))).toBe("12,500");
    expect(parse("mass_kg", "1,250.5 g").value).toBeCloseTo(1.2505, 12);
  });

  test("a sentence that ends with the time of day ends with one point", () => {
    const at = new Date(2026, 2, 4, 15, 40).getTime();
    expect(plain(formatTime(at))).toBe("3:40 p.m.");
    expect(plain(t("settings.heard", { time: formatTime(at) }))).toMatch(/3:40 p\.m\.$/);
    expect(t("settings.heard", { time: "15:40" })).toMatch(/15:40\.$/);
  });

  test("Spain's Spanish, chosen on a Mexican phone, has Spain's figures and clock", () => {
    reads("es");
    expect(plain(format("caramel_kg", 1.134))).toBe("1,13 kg");
    expect(formatTime(new Date(2026, 2, 4, 15, 40).getTime())).toBe("15:40");
  });

  test("a Peruvian phone reads the Spanish texts with the point of its country", () => {
    usedIn("es-PE");
    reads("es");
    expect(plain(format("caramel_kg", 1.134))).toBe("1.13 kg");
  });
});
