import type { Command, Drawing } from "./drawing";
import { flow } from "./flow";
import { CAP_HEIGHT, LEADING, unknownLetters, widthOf } from "./letters";

/** A card that says which piece of a box is which. */
export interface GuideCard {
  title: string;
  /** What is in the box, in the order in which it is laid, row by row; the first is number 1. */
  lines: { name: string; count: number }[];
  columns: number | null;
  rows: number | null;
}

const [WIDTH, EDGE, SIZE, TITLE] = [90, 5, 3.2, 4.5];
const WIDEST_POCKET = 14;
const RULE = 0.2;
/** More pockets than these have figures nobody reads. */
export const MOST_POCKETS = 100;

/** The card, as high as it takes; or the letters that the font lacks; null: it has no room for so many pockets. */
export function guideCard({ title, lines, columns, rows }: GuideCard): Drawing | { letters: string } | null {
  const letters = unknownLetters([title, ...lines.map(({ name }) => name)].join(""));
  if (letters) return { letters };
  const pieces = lines.flatMap(({ count }, nth) => Array.from({ length: count }, () => nth + 1));
  const across = columns ?? Math.max(1, Math.ceil(Math.sqrt(pieces.length)));
  const down = Math.max(rows ?? 0, Math.ceil(pieces.length / across), 1);
  if (across * down > MOST_POCKETS) return null;
  const side = Math.min(WIDEST_POCKET, (WIDTH - 2 * EDGE) / across);
  const column = { x: EDGE, width: () => WIDTH - 2 * EDGE };
  const heading = flow([{ text: title, bold: true }], { ...column, top: EDGE, size: TITLE });
  const top = (heading?.bottom ?? EDGE) + SIZE;
  const commands: Command[] = [...(heading?.commands ?? []), ...grid(across, down, side, top), ...pieces.map((number, nth) => figure(number, EDGE + (nth % across) * side, top + Math.floor(nth / across) * side, side))];
  let bottom = top + down * side + SIZE;
  for (const [nth, { name, count }] of lines.entries()) {
    const row = flow([{ text: `${nth + 1} `, bold: true }, { text: `${name} (${count})`, bold: false }], { ...column, top: bottom, size: SIZE });
    commands.push(...(row?.commands ?? []));
    bottom = row?.bottom ?? bottom + LEADING * SIZE;
  }
  return { width: WIDTH, height: Math.ceil(bottom + EDGE), commands };
}

function grid(across: number, down: number, side: number, top: number): Command[] {
  const upright = Array.from({ length: across + 1 }, (_, n): Command => ({ kind: "box", x: EDGE + n * side - RULE / 2, y: top, width: RULE, height: down * side }));
  const level = Array.from({ length: down + 1 }, (_, n): Command => ({ kind: "box", x: EDGE, y: top + n * side - RULE / 2, width: across * side, height: RULE }));
  return [...upright, ...level];
}

/** A number in the middle of its pocket. */
function figure(number: number, x: number, y: number, side: number): Command {
  const size = side / 2;
  const text = String(number);
  return { kind: "text", x: x + (side - widthOf(text, true) * size) / 2, y: y + (side + CAP_HEIGHT * size) / 2, size, bold: true, text };
}
