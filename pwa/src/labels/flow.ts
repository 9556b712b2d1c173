import type { Command } from "./drawing";
import { LEADING, widthOf } from "./letters";

/** So much text in one weight. */
export interface Run {
  text: string;
  bold: boolean;
}

interface Line {
  width: number;
  runs: Run[];
}

export interface Column {
  x: number;
  top: number;
  size: number;
  /** How wide a line may be that ends so far down. */
  width: (bottom: number) => number;
}

/** Sets a paragraph from `top` down, broken at spaces; null: a word is wider than its line. */
export function flow(runs: Run[], { x, top, width, size }: Column): { commands: Command[]; bottom: number } | null {
  const lines = broken(runs, (line) => width(top + (line + 1) * LEADING * size) / size);
  if (!lines) return null;
  const commands = lines.flatMap((line, i) => drawn(line, x, top + (i * LEADING + 0.95) * size, size));
  return { commands, bottom: top + lines.length * LEADING * size };
}

/** The lines of a paragraph; widths in sizes, that of a line by its number. */
function broken(runs: Run[], width: (line: number) => number): Line[] | null {
  const lines: Line[] = [{ width: 0, runs: [] }];
  for (const word of wordsOf(runs)) {
    const wide = word.reduce((sum, run) => sum + widthOf(run.text, run.bold), 0);
    let line = lines.at(-1) as Line;
    const bold = line.runs.at(-1)?.bold === true && word[0]?.bold === true;
    const space = line.runs.length ? widthOf(" ", bold) : 0;
    if (line.width + space + wide > width(lines.length - 1)) {
      if (wide > width(lines.length)) return null;
      if (space) lines.push((line = { width: 0, runs: [] }));
      else if (wide > width(lines.length - 1)) return null;
    } else if (space) add(line, { text: " ", bold });
    for (const run of word) add(line, run);
  }
  return lines;
}

function add(line: Line, run: Run): void {
  const last = line.runs.at(-1);
  line.width += widthOf(run.text, run.bold);
  if (last?.bold === run.bold) last.text += run.text;
  else line.runs.push({ ...run });
}

/** What stays together: from space to space, whatever its weights. */
function wordsOf(runs: Run[]): Run[][] {
  const words: Run[][] = [[]];
  for (const { text, bold } of runs) {
    text.split(/[ \n]+/).forEach((piece, i) => {
      if (i > 0) words.push([]);
      if (piece) words.at(-1)?.push({ text: piece, bold });
    });
  }
  return words.filter((word) => word.length > 0);
}

function drawn({ runs }: Line, x: number, y: number, size: number): Command[] {
  let at = x;
  return runs.map(({ text, bold }) => {
    const command: Command = { kind: "text", x: at, y, size, bold, text };
    at += widthOf(text, bold) * size;
    return command;
  });
}
