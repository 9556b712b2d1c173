import { correction, generate } from "lean-qr";

import type { Command } from "./drawing";

/** A module is a whole number of dots at 203 dpi (3) and close to five at 300 dpi; smaller ones were not read everywhere. */
export const MODULE_MM = 0.375;
/** Modules kept clear on every side. */
const QUIET = 4;

export interface QrCode {
  /** With the clear edge. */
  side: number;
  commands: Command[];
}

/** A lot's code, to be read off a box: its dark modules, row by row, side by side as one. */
export function lotCode(code: string, x = 0, y = 0): QrCode {
  const found = generate(`LOT:${code}`, { minCorrectionLevel: correction.M });
  const commands: Command[] = [];
  for (let row = 0; row < found.size; row++) {
    for (let column = 0; column < found.size; column++) {
      if (!found.get(column, row)) continue;
      let end = column;
      while (found.get(end + 1, row)) end += 1;
      const width = (end - column + 1) * MODULE_MM;
      commands.push({ kind: "box", x: x + (column + QUIET) * MODULE_MM, y: y + (row + QUIET) * MODULE_MM, width, height: MODULE_MM });
      column = end;
    }
  }
  return { side: (found.size + 2 * QUIET) * MODULE_MM, commands };
}
