/** What is printed, as a list of commands in millimetres from the upper left corner: the same for preview, PDF and tests. */
export type Command =
  /** `y` is the line the letters stand on, `size` the font's. */
  | { kind: "text"; x: number; y: number; size: number; bold: boolean; text: string }
  | { kind: "box"; x: number; y: number; width: number; height: number }
  /** Outlines, filled where an odd number of them lies around. */
  | { kind: "shape"; outlines: [x: number, y: number][][] };

export interface Drawing {
  width: number;
  height: number;
  commands: Command[];
}

/** A page, and the drawings that lie on it. */
export interface Page {
  width: number;
  height: number;
  placed: { drawing: Drawing; x: number; y: number }[];
}

/** A page with one drawing, as large as it. */
export function alone(drawing: Drawing): Page {
  return { width: drawing.width, height: drawing.height, placed: [{ drawing, x: 0, y: 0 }] };
}
