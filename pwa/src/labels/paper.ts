import type { Command, Drawing, Page } from "./drawing";
import { MARGIN, type Size } from "./label";
import { widthOf } from "./letters";

/** Sheets of paper (mm). */
export const SHEETS = { a4: { width: 210, height: 297 }, letter: { width: 215.9, height: 279.4 } } as const;
export type Sheet = keyof typeof SHEETS;

/** What labels are printed on. `one`: each a page of its own size; else so many on a sheet: columns, rows, size, where the first begins and
 * how far the next is (mm). `offset`: how far this printer is to print further right and down. `measured`: of a line of `asked` mm. */
export interface Paper {
  sheet: Sheet | "one";
  columns: number;
  rows: number;
  width: number;
  height: number;
  x0: number;
  y0: number;
  dx: number;
  dy: number;
  offset_x: number;
  offset_y: number;
  measured: number | null;
}

/** What a printer cannot reach along the edges of a sheet. */
const EDGE = 5;
/** By so little a printed line may differ: what one can read off a ruler. */
const TRUE_WITHIN = 0.005;
const RULER_MM = 100;

export function plainPaper(width: number, height: number): Paper {
  return { sheet: "one", columns: 1, rows: 1, width, height, x0: 0, y0: 0, dx: width, dy: height, offset_x: 0, offset_y: 0, measured: null };
}

/** The label as it is laid out for a paper: what lies near the edge of a sheet keeps clear of it. */
export function labelSize(paper: Paper): Size {
  const { sheet, width, height } = paper;
  if (sheet === "one") return { width, height, margin: MARGIN };
  const page = SHEETS[sheet];
  const [right, bottom] = [page.width - paper.x0 - (paper.columns - 1) * paper.dx - width, page.height - paper.y0 - (paper.rows - 1) * paper.dy - height];
  return { width, height, margin: Math.max(MARGIN, ...[paper.x0, paper.y0, right, bottom].map((free) => EDGE - free)) };
}

/** Which measure of a sheet cannot be so; null: all labels lie on it, none on another. */
export function outOfPlace(paper: Paper): "columns" | "rows" | null {
  if (paper.sheet === "one") return null;
  const page = SHEETS[paper.sheet];
  const along = (n: number, from: number, step: number, size: number, all: number) => from >= 0 && n >= 1 && (n === 1 || step >= size - 0.001) && from + (n - 1) * step + size <= all + 0.001;
  if (!along(paper.columns, paper.x0, paper.dx, paper.width, page.width)) return "columns";
  return along(paper.rows, paper.y0, paper.dy, paper.height, page.height) ? null : "rows";
}

/** So many copies of a label, page after page; the first sheet begins after `used` labels that are gone. */
export function pagesOf(drawing: Drawing, copies: number, paper: Paper, used = 0): Page[] {
  const { offset_x, offset_y } = paper;
  if (paper.sheet === "one") {
    const { width, height } = paper;
    return Array.from({ length: copies }, () => ({ width, height, placed: [{ drawing, x: offset_x, y: offset_y }] }));
  }
  const page = SHEETS[paper.sheet];
  const each = paper.columns * paper.rows;
  const pages: Page[] = [];
  for (let n = used; n < used + copies; n++) {
    const on = Math.floor(n / each);
    const place = n % each;
    pages[on] ??= { ...page, placed: [] };
    const x = paper.x0 + (place % paper.columns) * paper.dx + offset_x;
    const y = paper.y0 + Math.floor(place / paper.columns) * paper.dy + offset_y;
    pages[on].placed.push({ drawing, x, y });
  }
  return pages;
}

/** The page a ruler is printed on, and how long its line is. */
export function rulerLength({ sheet, width }: Paper): number {
  const page = sheet === "one" ? width : SHEETS[sheet].width;
  return Math.min(RULER_MM, Math.floor((page - 10) / 10) * 10);
}

/** A line to measure, with a mark every 10 mm. */
export function rulerPage(paper: Paper, sentence: string): Page {
  const page = paper.sheet === "one" ? { width: paper.width, height: paper.height } : SHEETS[paper.sheet];
  const long = rulerLength(paper);
  const x = (page.width - long) / 2;
  const y = page.height / 3;
  const marks: Command[] = Array.from({ length: long / 10 + 1 }, (_, n) => ({ kind: "box", x: x + 10 * n - 0.1, y: y - 3, width: 0.2, height: 6 }));
  const size = Math.min(4, long / widthOf(sentence, false));
  const line: Command = { kind: "box", x: x - 0.1, y: y - 0.1, width: long + 0.2, height: 0.2 };
  const words: Command = { kind: "text", x, y: y + 5 + size, size, bold: false, text: sentence };
  return { ...page, placed: [{ drawing: { ...page, commands: [line, ...marks, words] }, x: 0, y: 0 }] };
}

/** How large this printer prints: 1 is true; null: nobody has measured. */
export function scaleOf(paper: Paper): number | null {
  return paper.measured === null ? null : paper.measured / rulerLength(paper);
}

/** Whether a label printed on it keeps the heights that the rule wants. */
export function isTrue(paper: Paper): boolean {
  const scale = scaleOf(paper);
  return scale !== null && Math.abs(scale - 1) <= TRUE_WITHIN;
}
