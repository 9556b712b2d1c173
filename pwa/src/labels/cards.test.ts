import { describe, expect, it, test } from "vitest";

import { alone, type Command, type Drawing } from "./drawing";
import { guideCard } from "./guideCard";
import { label, type LabelText, MARGIN } from "./label";
import { widthOf } from "./letters";
import { pdf } from "./pdf";

const TEXT: LabelText = { name: "Almond caramels", paragraphs: [[{ text: "Ingredients: sugar, milk.", bold: false }]], lines: ["Lot 26334A"], net: "113 g", eMark: true, code: "26334A" };
const textsOf = ({ commands }: Drawing) => commands.filter((one): one is Extract<Command, { kind: "text" }> => one.kind === "text");

/** Whether a point lies in an outline: how often a line to the right crosses it. */
function isInside(outline: [number, number][], x: number, y: number): boolean {
  return outline.filter(([x1, y1], i) => {
    const [x2, y2] = outline[(i + 1) % outline.length]!;
    return y1 > y !== y2 > y && x < x1 + ((y - y1) / (y2 - y1)) * (x2 - x1);
  }).length % 2 === 1;
}

test("the e mark stands beside the net weight, 3 mm high at least, inside the label and clear of the text", () => {
  const laid = label(TEXT, { width: 100, height: 60, margin: MARGIN }, { xHeight: 1.2, netHeight: 2, netStandsFree: false });
  if (!("drawing" in laid)) throw new Error("no label");
  const { drawing } = laid;
  const [shape] = drawing.commands.filter((one) => one.kind === "shape");
  const net = textsOf(drawing).find((one) => one.text === "113 g")!;
  const points = shape!.outlines.flat();
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  expect(Math.max(...ys) - Math.min(...ys)).toBeGreaterThanOrEqual(3 - 1e-9);
  expect(Math.max(...ys)).toBeCloseTo(net.y, 2);
  expect(Math.min(...xs)).toBeGreaterThan(net.x + widthOf(net.text, true) * net.size);
  expect(Math.max(...xs)).toBeLessThan(drawing.width - MARGIN);
  // The bar is filled, the hole above it and the opening below on the right are not.
  const filled = (x: number, y: number) => shape!.outlines.filter((line) => isInside(line, x, y)).length % 2 === 1;
  const [middle, centre] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  expect([filled(middle, centre), filled(middle, centre - 0.6), filled(Math.max(...xs) - 0.2, centre + 0.4), filled(Math.min(...xs) + 0.2, centre + 0.4)]).toEqual([true, false, false, true]);
  expect(new TextDecoder("latin1").decode(pdf([alone(drawing)], "Labels"))).toContain(" h f*");
});

describe("a guide card", () => {
  const card = { title: "Box of six", lines: [{ name: "Salted squares", count: 4 }, { name: "Pecan clusters", count: 2 }], columns: 3, rows: 2 };

  it("has a number in each pocket, in laying order, and every name with its number", () => {
    const drawing = guideCard(card);
    if (!drawing || "letters" in drawing) throw new Error("no card");
    const words = textsOf(drawing).map((one) => one.text);
    expect(textsOf(drawing).filter(({ text, size }) => /^\d$/.test(text) && size > 5).map(({ text }) => text)).toEqual(["1", "1", "1", "1", "2", "2"]);
    expect(words.join("")).toContain("Pecan clusters (2)");
    for (const one of textsOf(drawing)) expect(one.x + widthOf(one.text, one.bold) * one.size).toBeLessThanOrEqual(drawing.width);
    expect(Math.max(...textsOf(drawing).map((one) => one.y))).toBeLessThan(drawing.height);
  });

  it("has room for a hundred pockets, and says what letters it cannot print", () => {
    expect(guideCard({ ...card, columns: 11, rows: 10 })).toBeNull();
    expect(guideCard({ ...card, columns: null, rows: null, lines: [{ name: "Squares", count: 1000 }] })).toBeNull();
    expect(guideCard({ ...card, title: "キャラメル" })).toEqual({ letters: "キャラメル" });
  });
});
