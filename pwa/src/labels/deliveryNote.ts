import type { Command, Page } from "./drawing";
import { flow, type Run } from "./flow";
import { LEADING, widthOf } from "./letters";
import { SHEETS, type Sheet } from "./paper";

/** What goes with a delivery, in its words. */
export interface DeliveryNote {
  title: string;
  /** Who delivers, and to whom: name first, then the address. */
  from: string[];
  to: string[];
  /** Day, number of the note: a line each. */
  facts: string[];
  headings: { count: string; what: string; lot: string };
  lines: { count: string; what: string; lot: string }[];
  note: string;
  /** Where somebody signs. */
  received: string;
}

const EDGE = 18;
const SIZE = 4;
const [COUNT_WIDTH, LOT_WIDTH] = [22, 34];

/** A delivery note on as many sheets as it takes. */
export function deliveryNotePages(note: DeliveryNote, sheet: Sheet): Page[] {
  const page = SHEETS[sheet];
  const inside = page.width - 2 * EDGE;
  const pages: Command[][] = [[]];
  let top = heading(note, pages[0] as Command[], inside);
  for (const line of [note.headings, ...note.lines]) {
    const row = tableRow(line, top, inside, line === note.headings);
    if (row.bottom > page.height - EDGE - 3 * SIZE) {
      pages.push([]);
      top = EDGE;
      const next = tableRow(line, top, inside, false);
      pages.at(-1)?.push(...next.commands);
      top = next.bottom;
    } else {
      pages.at(-1)?.push(...row.commands);
      top = row.bottom;
    }
  }
  ending(note, pages, top, page.height);
  return pages.map((commands) => ({ ...page, placed: [{ drawing: { ...page, commands }, x: 0, y: 0 }] }));
}

function heading(note: DeliveryNote, commands: Command[], inside: number): number {
  const set = (words: string, x: number, top: number, width: number, size: number, bold: boolean) => {
    const found = flow(cut(words, width / size, bold), { x, top, width: () => width, size });
    commands.push(...(found?.commands ?? []));
    return found?.bottom ?? top;
  };
  let left = set(note.title, EDGE, EDGE, inside, 2 * SIZE, true) + SIZE;
  let right = left;
  const half = inside / 2 - SIZE;
  for (const [i, line] of note.from.entries()) left = set(line, EDGE, left, half, SIZE, i === 0);
  for (const [i, line] of note.to.entries()) right = set(line, EDGE + inside / 2, right, half, SIZE, i === 0);
  let top = Math.max(left, right) + SIZE;
  for (const line of note.facts) top = set(line, EDGE, top, inside, SIZE, false);
  return top + SIZE;
}

function tableRow({ count, what, lot }: DeliveryNote["headings"], top: number, inside: number, bold: boolean) {
  const column = (words: string, x: number, width: number) => flow(cut(words, width / SIZE, bold), { x, top, width: () => width, size: SIZE });
  const set = [column(count, EDGE, COUNT_WIDTH - 2), column(what, EDGE + COUNT_WIDTH, inside - COUNT_WIDTH - LOT_WIDTH - 2), column(lot, EDGE + inside - LOT_WIDTH, LOT_WIDTH)];
  const bottom = Math.max(...set.map((one) => one?.bottom ?? top)) + 1.5;
  const rule: Command = { kind: "box", x: EDGE, y: bottom, width: inside, height: bold ? 0.4 : 0.15 };
  return { commands: [...set.flatMap((one) => one?.commands ?? []), rule], bottom: bottom + 1.5 };
}

function ending({ note, received }: DeliveryNote, pages: Command[][], top: number, height: number): void {
  const last = pages.at(-1) as Command[];
  const inside = SHEETS.a4.width - 2 * EDGE;
  const words = flow(cut(note, inside / SIZE, false), { x: EDGE, top: top + SIZE, width: () => inside, size: SIZE });
  last.push(...(words?.commands ?? []));
  const y = height - EDGE;
  const long = widthOf(received, false) * SIZE;
  last.push({ kind: "text", x: EDGE, y, size: SIZE, bold: false, text: received });
  last.push({ kind: "box", x: EDGE + long + 2, y: y + SIZE * (LEADING - 1), width: 70, height: 0.2 });
}

/** Words too wide for their column, cut where they must be. */
function cut(words: string, width: number, bold: boolean): Run[] {
  const fitting = words.split(" ").map((word) => {
    let [line, all] = ["", ""];
    for (const letter of word) {
      if (widthOf(line + letter, bold) > width) [all, line] = [`${all}${line} `, ""];
      line += letter;
    }
    return all + line;
  });
  return [{ text: fitting.join(" "), bold }];
}
