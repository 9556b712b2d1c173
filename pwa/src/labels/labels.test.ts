import { describe, expect, it } from "vitest";

import type { LabelContentReply } from "../documents";
import { type DeliveryNote, deliveryNotePages } from "./deliveryNote";
import { alone, type Command, type Drawing } from "./drawing";
import type { Run } from "./flow";
import { type Floors, label, type LabelText, MARGIN } from "./label";
import { CAP_HEIGHT, unknownLetters, widthOf, X_HEIGHT } from "./letters";
import { isTrue, labelSize, outOfPlace, pagesOf, type Paper, plainPaper, rulerPage } from "./paper";
import { pdf } from "./pdf";
import { lotCode, MODULE_MM } from "./qr";
import { floorsOf, labelText, type Language } from "./words";

const LIST =
  "Caramel [glucose syrup, sugar, cream (milk), butter (milk), sweetened condensed milk, salt], almonds, dark chocolate (cocoa mass, sugar, cocoa butter, emulsifier: soya lecithin), sea salt.";
const LISTA =
  "Caramelo [jarabe de glucosa, azúcar, nata (leche), mantequilla (leche), leche condensada, sal], almendras, chocolate negro (pasta de cacao, azúcar, manteca de cacao, emulgente: lecitina de soja), sal marina.";
const US: Floors = { xHeight: 25.4 / 16, netHeight: 25.4 / 16, netStandsFree: true };
const EU: Floors = { xHeight: 1.2, netHeight: 3, netStandsFree: false };
const SMALL: Floors = { ...EU, xHeight: 0.9 };
const plain = (text: string): Run => ({ text, bold: false });
const strong = (text: string): Run => ({ text, bold: true });

function textOf(rule: "us" | "eu", languages: number): LabelText {
  const us = rule === "us";
  const english = [[strong("Ingredients: "), plain(LIST)], ...(us ? [[strong("Contains: "), plain("milk, almonds, soya.")]] : []), [strong("May contain: "), plain("pecans.")]];
  const spanish = [[strong("Ingredientes: "), plain(LISTA)], ...(us ? [[strong("Contiene: "), plain("leche, almendras, soja.")]] : []), [strong("Puede contener: "), plain("pacanas.")]];
  return {
    name: "Almond caramels",
    paragraphs: languages === 2 ? [...english, ...spanish] : english,
    lines: ["Lot 26334A, best by Jan 20, 2027", "Corner Caramels, 1 Main St, Springfield, OR 97477"],
    net: us ? "NET WT 4 OZ (113 g)" : "113 g",
    code: "26334A",
  };
}

const size = (width: number, height: number, margin = MARGIN) => ({ width, height, margin });
const textsOf = ({ commands }: Drawing) => commands.filter((one): one is Extract<Command, { kind: "text" }> => one.kind === "text");
const drawn = (text: LabelText, floors: Floors, width = 100, height = 60) => {
  const laid = label(text, size(width, height), floors);
  if (!("drawing" in laid)) throw new Error(JSON.stringify(laid));
  return laid;
};

describe("a label of its size", () => {
  // The table of what was tried with another font first and this one second: 62 × 29, 70 × 37, 70 × 50, 100 × 60 mm.
  it.each([
    ["US 1/16 in, English", textOf("us", 1), US, [false, false, true, true]],
    ["EU 1.2 mm, English", textOf("eu", 1), EU, [false, true, true, true]],
    ["EU 0.9 mm, English", textOf("eu", 1), SMALL, [true, true, true, true]],
    ["US, English and Spanish", textOf("us", 2), US, [false, false, false, true]],
    ["EU 1.2 mm, English and Spanish", textOf("eu", 2), EU, [false, false, true, true]],
  ])("%s fits where its least letters do and is refused elsewhere", (_, text, floors, fits) => {
    const sizes = [size(62, 29), size(70, 37), size(70, 50), size(100, 60)];
    expect(sizes.map((one) => "drawing" in label(text, one, floors))).toEqual(fits);
  });

  it("says what size would do, and that size does", () => {
    const refused = label(textOf("us", 1), size(62, 29), US);
    if (!("fits" in refused) || !refused.fits) throw new Error("it fits");
    expect(refused.fits.width).toBe(62);
    expect("drawing" in label(textOf("us", 1), size(62, refused.fits.height), US)).toBe(true);
    expect("drawing" in label(textOf("us", 1), size(62, refused.fits.height - 1), US)).toBe(false);
  });

  it("has no letter below the least height, lies inside its edge and grows where there is room", () => {
    for (const [text, floors] of [[textOf("us", 1), US], [textOf("eu", 2), EU], [textOf("eu", 1), SMALL]] as const) {
      const { drawing, xHeight } = drawn(text, floors);
      for (const one of textsOf(drawing)) {
        expect(one.size * X_HEIGHT).toBeGreaterThanOrEqual(floors.xHeight - 1e-9);
        expect(one.x).toBeGreaterThanOrEqual(MARGIN - 1e-9);
        expect(one.x + widthOf(one.text, one.bold) * one.size).toBeLessThanOrEqual(100 - MARGIN + 1e-9);
        expect(one.y).toBeLessThanOrEqual(60 - MARGIN + 1e-9);
      }
      expect(xHeight).toBeGreaterThan(floors.xHeight);
    }
  });

  it("prints the net weight as high as its rule wants, lowest, with its own height clear above it", () => {
    const { drawing } = drawn(textOf("us", 1), { ...US, netHeight: 25.4 / 8 }, 100, 70);
    const all = textsOf(drawing);
    const net = all.find((one) => one.text.startsWith("NET WT"))!;
    const height = net.size * CAP_HEIGHT;
    expect(height).toBeGreaterThanOrEqual(25.4 / 8 - 1e-9);
    for (const one of all) if (one !== net) expect(one.y).toBeLessThanOrEqual(net.y - 2 * height + 1e-9);
  });

  it("keeps every word once and in order, and no line overlaps the code", () => {
    const { drawing, hasCode } = drawn(textOf("us", 1), US);
    const words = textsOf(drawing).map((one) => one.text).join(" ").replaceAll("\u00a0", " ");
    expect(words.replace(/\s+/g, " ")).toContain("Ingredients: Caramel [glucose syrup, sugar, cream (milk)");
    expect(hasCode).toBe(true);
    const boxes = drawing.commands.filter((one) => one.kind === "box");
    const [left, top] = [Math.min(...boxes.map((one) => one.x)), Math.min(...boxes.map((one) => one.y))];
    for (const one of textsOf(drawing)) {
      const isBeside = one.x + widthOf(one.text, one.bold) * one.size <= left - 4 * MODULE_MM + 1e-9;
      expect(isBeside || one.y <= top).toBe(true);
    }
  });

  it("is refused with the letters that cannot be printed", () => {
    expect(label({ ...textOf("us", 1), name: "Карамель ½ ñ" }, size(100, 60), US)).toMatchObject({ letters: "Кармель" });
    expect(unknownLetters("60\u202fmm")).toBe("");
    expect(unknownLetters("jalapeño, ½ oz, 5 µg, 12 °C — “x”")).toBe("");
  });

  it("is refused where a word is wider than any line", () => {
    const laid = label({ ...textOf("eu", 1), name: "Schokoladenkaramellen".repeat(12) }, size(62, 29), EU);
    expect(laid).toEqual({ letters: "", fits: null });
  });
});

const CONTENT: LabelContentReply = {
  name: "Almond caramels",
  ingredients: [
    { text: "almonds, ", is_strong: false },
    { text: "milk", is_strong: true },
    { text: ".", is_strong: false },
  ],
  contains: ["milk", "almond"],
  allergens: ["milk", "almond"],
  may_contain: [],
  net: { grams: 680, ounces: 24, pounds: 1, rest_ounces: 8, letter_m: 0.003175, area_wanted: false },
  code: "26334A",
  made_on: "2026-11-30",
  best_by: "2027-01-20",
  address: "1 Main St\nSpringfield, OR 97477",
  warnings: [],
  is_complete: true,
  e_mark: false,
};
const SAID: Record<string, string> = { "labels.net_weight": "Net wt", "allergen.milk": "milk", "allergen.almond": "almonds", "labels.contains": "Contains", "labels.lot": "Lot", "labels.best_by_us": "Best by", "labels.best_by_eu": "Best before", "labels.ingredients": "Ingredients" };
const ENGLISH: Language = { locale: "en", says: (key) => SAID[key] ?? key };

describe("the words of a label", () => {
  it("have the net weight in both units and capitals for the US, in grams for the EU", () => {
    expect(labelText([CONTENT], "us", [ENGLISH]).net.replaceAll("\u00a0", " ")).toBe("NET WT 1 LB 8 OZ (680 g)");
    expect(labelText([{ ...CONTENT, net: { ...CONTENT.net!, ounces: 4, pounds: 0, rest_ounces: 4, grams: 113 } }], "us", [ENGLISH]).net.replaceAll("\u00a0", " ")).toBe("NET WT 4 OZ (113 g)");
    expect(labelText([CONTENT], "eu", [ENGLISH]).net.replaceAll("\u00a0", " ")).toBe("680 g");
  });

  it("write the month in letters", () => {
    expect(labelText([CONTENT], "us", [ENGLISH]).lines).toContain("Best by Jan 20, 2027");
    expect(labelText([CONTENT], "uk", [ENGLISH]).lines).toContain("Best before 20 Jan 2027");
  });

  it("keep strong what the engine found, and add the US line of allergens", () => {
    const [list, contains] = labelText([CONTENT], "us", [ENGLISH]).paragraphs;
    expect(list?.filter((run) => run.bold).map((run) => run.text)).toEqual(["Ingredients: ", "milk"]);
    expect(contains?.map((run) => run.text).join("")).toBe("Contains: milk and almonds.");
  });

  it("are as high as the rule says", () => {
    expect(floorsOf("us", CONTENT.net, null)).toEqual({ xHeight: 1.5875, netHeight: 3.175, netStandsFree: true });
    expect(floorsOf("eu", CONTENT.net, 0.0081).xHeight).toBe(1.2);
    // The 80 cm² from memory.
    expect(floorsOf("uk", CONTENT.net, 0.0079).xHeight).toBe(0.9);
  });
});

const A4: Paper = { ...plainPaper(70, 37), sheet: "a4", columns: 3, rows: 8, x0: 0, y0: 0.5 };

describe("a label in two languages, with its day and the e mark", () => {
  const SPANISH: Language = { locale: "es", says: (key) => `es ${key}` };
  const inSpanish = { ...CONTENT, ingredients: [{ text: "almendras.", is_strong: false }] };

  it("has each list of ingredients in its language, and one list where they are the same", () => {
    const both = labelText([CONTENT, inSpanish], "eu", [ENGLISH, SPANISH]).paragraphs.map((runs) => runs.map((run) => run.text).join(""));
    expect(both.slice(0, 2)).toEqual([`${ENGLISH.says("labels.ingredients")}: almonds, milk.`, "es labels.ingredients: almendras."]);
    expect(labelText([CONTENT, CONTENT], "eu", [ENGLISH, SPANISH]).paragraphs[0]?.[0]?.text).toBe(`${ENGLISH.says("labels.ingredients")} / es labels.ingredients: `);
  });

  it("says when it was made where that is wanted", () => {
    const made = { ...CONTENT, made_on: "2026-11-30" };
    expect(labelText([made], "eu", [ENGLISH], true).lines.some((line) => line.endsWith("30 Nov 2026"))).toBe(true);
    expect(labelText([made], "eu", [ENGLISH]).lines.some((line) => line.endsWith("30 Nov 2026"))).toBe(false);
  });
});

describe("paper", () => {
  const drawing: Drawing = { width: 70, height: 37, commands: [] };

  it("has three by eight labels on A4, each where it belongs, moved by what the printer is off", () => {
    expect(outOfPlace(A4)).toBeNull();
    const [page, ...more] = pagesOf(drawing, 24, { ...A4, offset_x: 0.5, offset_y: -0.25 });
    expect(more).toEqual([]);
    expect(page?.placed[4]).toMatchObject({ x: 70.5, y: 37.25 });
  });

  it("goes on where the first sheet has labels left", () => {
    const pages = pagesOf(drawing, 24, A4, 20);
    expect(pages.map((page) => page.placed.length)).toEqual([4, 20]);
  });

  it("refuses a grid that runs over its sheet", () => {
    expect(outOfPlace({ ...A4, columns: 4 })).toBe("columns");
    expect(outOfPlace({ ...A4, rows: 9 })).toBe("rows");
    expect(outOfPlace({ ...A4, dx: 60 })).toBe("columns");
  });

  it("keeps labels along the edge of a sheet clear of what no printer reaches", () => {
    expect(labelSize(A4).margin).toBe(5);
    expect(labelSize(plainPaper(70, 37)).margin).toBe(MARGIN);
  });

  it("is true within half a millimetre of a hundred, and never before somebody measured", () => {
    expect([null, 100, 99.6, 99.4, 100.6, 97].map((measured) => isTrue({ ...A4, measured }))).toEqual([false, true, true, false, false, false]);
  });

  it("has a ruler that is as long as it says, also on a small label", () => {
    for (const [paper, long] of [[A4, 100], [plainPaper(62, 29), 50]] as const) {
      const boxes = rulerPage(paper, "This line must measure 100 mm.").placed[0]!.drawing.commands.filter((one) => one.kind === "box");
      const marks = boxes.slice(1).map((one) => one.x + one.width / 2);
      expect(marks.at(-1)! - marks[0]!).toBeCloseTo(long, 9);
    }
  });
});

describe("the code of a lot", () => {
  it("has modules of 0.375 mm, four of them clear on every side", () => {
    const { side, commands } = lotCode("26334A");
    expect(side).toBeCloseTo(29 * 0.375, 9);
    const boxes = commands.filter((one) => one.kind === "box");
    expect(Math.min(...boxes.map((one) => one.x))).toBeCloseTo(4 * 0.375, 9);
    expect(Math.max(...boxes.map((one) => one.x + one.width))).toBeCloseTo(25 * 0.375, 9);
  });
});

const NOTE: DeliveryNote = {
  title: "Delivery note",
  from: ["Corner Caramels", "1 Main St"],
  to: ["Corner bakery"],
  facts: ["November 30, 2026"],
  headings: { count: "Number", what: "What", lot: "Lot" },
  lines: [],
  note: "",
  received: "Received:",
};

describe("a delivery note", () => {
  it("goes on to another sheet, no line lost", () => {
    const lines = Array.from({ length: 60 }, (_, n) => ({ count: String(n), what: `Box ${n} ${"long ".repeat(n % 5)}`, lot: "26334A" }));
    const pages = deliveryNotePages({ ...NOTE, lines }, "letter");
    expect(pages).toHaveLength(3);
    const all = pages.flatMap((page) => textsOf(page.placed[0]!.drawing));
    for (let n = 0; n < 60; n++) expect(all.some((one) => one.text.startsWith(`Box ${n} `.trim()))).toBe(true);
    for (const one of all) expect(one.y).toBeLessThanOrEqual(279.4 - 18);
  });

  it("cuts a word that is wider than its column", () => {
    const [page] = deliveryNotePages({ ...NOTE, lines: [{ count: "1", what: "x".repeat(200), lot: "" }] }, "a4");
    expect(textsOf(page!.placed[0]!.drawing).map((one) => one.text.match(/x/g)?.length ?? 0).reduce((a, b) => a + b)).toBe(200);
  });
});

describe("a file", () => {
  it("holds a drawing once however often it lies on a page, and says where each object begins", () => {
    const { drawing } = drawn(textOf("us", 1), US, 70, 50);
    const one = pdf([alone(drawing)], "Labels");
    const many = pdf(pagesOf(drawing, 15, { ...plainPaper(70, 50), sheet: "a4", columns: 3, rows: 5 }), "Labels");
    expect(many.length - one.length).toBeLessThan(1_500);
    const text = new TextDecoder("latin1").decode(many);
    const places = [...text.slice(text.lastIndexOf("xref")).matchAll(/(\d{10}) 00000 n/g)].map((found) => Number(found[1]));
    places.forEach((at, i) => expect(text.slice(at, at + 10)).toContain(`${i + 1} 0 obj`));
  });
});
