// @vitest-environment node
import { beforeEach, expect, test } from "vitest";

import type { Input } from "../documents";
import { loadLanguage, METRIC, reader } from "../text";
import { shownValue } from "./BasisMark";

const shown = (field: string, value: unknown, unit: string) =>
  shownValue({ field, value, unit, basis: "assumed" } as Input).replaceAll("\u202f", " ");

beforeEach(async () => {
  await loadLanguage("en");
  reader.value = { language: "en", units: METRIC };
});

test("a small constant keeps its figures and the engine's compound unit", () => {
  expect(shown("contact_m2k_w", 0.005, "m² K/W")).toBe("0.005 m² K/W");
  expect(shown("pour.spread_m2_s", 0.003, "m²/s")).toBe("0.003 m²/s");
  expect(shown("cool.base_conductivity_w_mk", 160, "W/(m K)")).toBe("160 W/(m K)");
  expect(shown("loss_factor", 1, "")).toBe("1");
  expect(shown("oven.unevenness", 2.5172, "")).toBe("2.52");
});

test("what the reader has a unit for is in that unit, and a share in per cent", () => {
  expect(shown("trim_m", 0.005, "m")).toBe("5 mm");
  expect(shown("melt.loss_w", 45.2, "W")).toBe("45 W");
  expect(shown("melt.dead_s", 2.5, "s")).toBe("3 s");
  expect(shown("under[0].kg_each", 0.0015, "kg")).toBe("1.5 g");
  expect(shown("residue", 0.02, "")).toBe("2 %");
  expect(shown("melt.drift_sd", 0.016, "")).toBe("1.6 %");
  expect(shown("room.humid_share", 0.55, "")).toBe("55 %");
});
