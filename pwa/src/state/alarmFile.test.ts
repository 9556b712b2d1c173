import { expect, test } from "vitest";

import { alarmFile } from "./alarmFile";

const NINE = Date.UTC(2026, 1, 9, 14, 0, 0);
const slab = { uid: "b1-touch@amberbench", writtenMs: NINE, startedMs: NINE, dueMs: NINE + 90 * 60_000, summary: "Slab B", say: "Press it." };

test("a clock becomes an event that rings at its end and twice again", () => {
  const lines = alarmFile(slab).split("\r\n");
  expect(lines).toContain("DTSTART:20260209T140000Z");
  expect(lines).toContain("DTEND:20260209T153000Z");
  expect(lines).toContain("TRIGGER;RELATED=END:PT0S");
  expect(lines.at(-1)).toBe("");
});

test("commas, semicolons and new lines in a name are escaped", () => {
  expect(alarmFile({ ...slab, summary: "Squares, 24 mm; soft\nB" })).toContain("SUMMARY:Squares\\, 24 mm\\; soft\\nB");
});

test("no line is longer than 75 octets, and unfolding gives the text back", () => {
  const say = "Plancha en reposo, no la mueva: ñandú ".repeat(6);
  const text = alarmFile({ ...slab, say });
  for (const line of text.split("\r\n")) expect(new TextEncoder().encode(line).length).toBeLessThanOrEqual(75);
  expect(text.replaceAll("\r\n ", "")).toContain(say.replaceAll(",", "\\,"));
});
