import type { Command, Drawing } from "./drawing";
import { eMark, eMarkWidth, LEAST_E_MARK } from "./eMark";
import { type Column, flow, type Run } from "./flow";
import { CAP_HEIGHT, LEADING, NO_BREAK, unknownLetters, widthOf, X_HEIGHT } from "./letters";
import { lotCode, MODULE_MM } from "./qr";

/** What a label says, in its words. */
export interface LabelText {
  name: string;
  /** Ingredients and allergens, a paragraph each. */
  paragraphs: Run[][];
  /** Lines that stay whole where they can: lot, days, the maker's address. */
  lines: string[];
  /** The net weight. */
  net: string;
  /** Whether the e mark stands beside it. */
  eMark?: boolean;
  /** The lot, as its code is read off; "": none. */
  code: string;
}

/** The least heights that the rule wants (mm), and what is kept clear above and beside the net weight. */
export interface Floors {
  xHeight: number;
  netHeight: number;
  netStandsFree: boolean;
}

export interface Size {
  width: number;
  height: number;
  margin: number;
}

export type Laid =
  | { drawing: Drawing; hasCode: boolean; xHeight: number }
  /** `letters`: some that cannot be printed. `fits`: what size would do; null: none that a label has. */
  | { letters: string; fits: Omit<Size, "margin"> | null };

export const MARGIN = 1.5;
/** How much larger than the least its letters grow where there is room. */
const LARGEST = 1.6;
const STEP = 0.05;
const NAME_SIZE = 1.35;
/** Between blocks, in sizes. */
const GAP = 0.35;
/** How far letters hang below their line, in sizes. */
const HANGING = 0.22;
const TALLEST_MM = 300;

/** A label's drawing, its letters as large as they can be; or why there is none: letters below the least are never printed. */
export function label(text: LabelText, size: Size, floors: Floors): Laid {
  const letters = unknownLetters([text.name, text.net, ...text.lines, ...text.paragraphs.flat().map((run) => run.text)].join("").replaceAll("\n", " "));
  if (letters) return { letters, fits: null };
  for (const code of text.code ? [text.code, ""] : [""]) {
    for (let grown = LARGEST; grown > 1 - STEP / 2; grown -= STEP) {
      const commands = lay({ ...text, code }, size, floors, Math.max(1, grown));
      if (commands) return { drawing: { width: size.width, height: size.height, commands }, hasCode: code !== "", xHeight: Math.max(1, grown) * floors.xHeight };
    }
  }
  return { letters: "", fits: fitting(text, size, floors) };
}

/** The lowest label of the same width that would do; where words are too wide for it, one that is larger both ways. */
function fitting(text: LabelText, size: Size, floors: Floors): Omit<Size, "margin"> | null {
  const does = (width: number, height: number) => lay({ ...text, code: "" }, { ...size, width, height }, floors, 1) !== null;
  for (let width = Math.ceil(size.width); width <= TALLEST_MM; width += 5) {
    if (!does(width, TALLEST_MM)) continue;
    let height = Math.ceil(size.height);
    while (!does(width, height)) height += 1;
    return { width, height };
  }
  return null;
}

function lay(text: LabelText, size: Size, floors: Floors, grown: number): Command[] | null {
  const body = (grown * floors.xHeight) / X_HEIGHT;
  const inside = size.width - 2 * size.margin;
  const code = text.code ? lotCode(text.code) : null;
  // Its clear edge may reach to where the label ends.
  const edge = size.margin - MARGIN;
  const codeTop = code ? size.height - edge - code.side : size.height;
  const beside = code ? size.width - edge - code.side - size.margin : inside;
  const net = netBlock(text, { size, beside, body, floors, code: code !== null });
  if (!net) return null;
  const width = (bottom: number) => (bottom > codeTop ? beside : inside);
  const column = { x: size.margin, width };
  const blocks = [
    { runs: [{ text: text.name, bold: true }], size: body * NAME_SIZE },
    ...text.paragraphs.map((runs) => ({ runs, size: body })),
    ...text.lines.map((line) => ({ runs: [{ text: whole(line, beside / body), bold: false }], size: body })),
  ];
  const set = stacked(blocks, column, size.margin);
  if (!set || set.bottom > net.top) return null;
  const drawn = code ? lotCode(text.code, size.width - edge - code.side, codeTop).commands : [];
  return [...set.commands, ...net.commands, ...drawn];
}

function stacked(blocks: { runs: Run[]; size: number }[], column: Omit<Column, "top" | "size">, top: number) {
  const commands: Command[] = [];
  let bottom = top;
  for (const { runs, size } of blocks) {
    const set = flow(runs, { ...column, top: bottom, size });
    if (!set) return null;
    commands.push(...set.commands);
    bottom = set.bottom + (GAP - 0.2) * size;
  }
  return { commands, bottom };
}

/** The net weight as the lowest line: above it its own height is kept clear, beside it twice the width of an N. */
function netBlock({ net: text, eMark: marked = false }: LabelText, { size, beside, body, floors, code }: { size: Size; beside: number; body: number; floors: Floors; code: boolean }) {
  const letter = Math.max(body, floors.netHeight / CAP_HEIGHT);
  const clear = floors.netStandsFree && code ? Math.max(0, 2 * widthOf("N", true) * letter - 4 * MODULE_MM) : 0;
  // What hangs below the line may hang into the margin.
  const y = size.height - size.margin - Math.max(0, HANGING * letter - MARGIN / 2);
  const mark = Math.max(LEAST_E_MARK, CAP_HEIGHT * letter);
  const wide = widthOf(text, true) * letter;
  if (text && wide + (marked ? letter / 2 + eMarkWidth(mark) : 0) > beside - clear) return null;
  if (!text) return { commands: [], top: y };
  const above = floors.netStandsFree ? CAP_HEIGHT * letter : (LEADING - 1 + GAP) * body;
  const command: Command = { kind: "text", x: size.margin, y, size: letter, bold: true, text };
  if (!marked) return { commands: [command], top: y - CAP_HEIGHT * letter - above };
  return { commands: [command, eMark(size.margin + wide + letter / 2, y, mark)], top: y - mark - above };
}

/** A line that is not broken where it fits whole; widths in sizes. */
function whole(line: string, width: number): string {
  return widthOf(line, false) <= width ? line.replaceAll(" ", NO_BREAK) : line;
}
