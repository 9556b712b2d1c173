import { bold, type Face, letters, regular } from "virtual:label-font";

/** A space at which no line ends. */
export const NO_BREAK = "\u00a0";
/** From one line to the next, in sizes. */
export const LEADING = 1.17;
/** In sizes. */
export const X_HEIGHT = Math.min(regular.xHeight, bold.xHeight) / 1000;
export const CAP_HEIGHT = Math.min(regular.capHeight, bold.capHeight) / 1000;

const byteOf = new Map([...letters].map((letter, i) => [letter, i + 32]));
// Narrow ones, as figures have them before their unit.
for (const space of "\u202f\u2009") byteOf.set(space, NO_BREAK.charCodeAt(0));

export function faceOf(isBold: boolean): Face {
  return isBold ? bold : regular;
}

/** A text's bytes in a PDF; undefined where the font lacks a letter. */
export function bytesOf(text: string): number[] | undefined {
  const bytes = [...text].map((letter) => byteOf.get(letter) ?? 0);
  return bytes.every((byte) => byte > 0 && (regular.widths[byte - 32] as number) > 0) ? bytes : undefined;
}

/** The letters of a text that no label can be printed with. */
export function unknownLetters(text: string): string {
  return [...new Set(text)].filter((letter) => !bytesOf(letter)).join("");
}

/** How wide a text is, in sizes. */
export function widthOf(text: string, isBold: boolean): number {
  const { widths } = faceOf(isBold);
  return [...text].reduce((sum, letter) => sum + (widths[(byteOf.get(letter) ?? 32) - 32] as number), 0) / 1000;
}
