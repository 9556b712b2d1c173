import type { Command } from "./drawing";

/** Least height of the mark (mm): 3 (directive 71/316/EEC; read in a summary), and what the corners of its outline cut off. Its
 * proportions are from memory. */
export const LEAST_E_MARK = 3.02;
/** Half its width and the thickness of its stroke at the sides and at top and bottom, of its height. */
const [ACROSS, SIDE, ENDS] = [0.48, 0.17, 0.06];
/** Half the height of its bar. */
const BAR = 0.035;
/** Where its opening ends, below the bar on the right (radians). */
const OPEN = 0.72;
const STEPS = 64;

/** How wide the mark is. */
export function eMarkWidth(height: number): number {
  return 2 * ACROSS * height;
}

/** The e mark of a height, its lower edge at `bottom`: a ring with a bar across, open on the right below the bar. */
export function eMark(x: number, bottom: number, height: number): Command {
  const [middleX, middleY] = [x + ACROSS * height, bottom - height / 2];
  const at = (across: number, down: number): [number, number] => [middleX + across * height, middleY + down * height];
  const [innerX, innerY] = [ACROSS - SIDE, 0.5 - ENDS];
  // Angles run from the right upwards round to the left; a point of an ellipse that lies at the height of the bar's edge.
  const ellipse = (a: number, b: number, from: number, to: number) =>
    Array.from({ length: STEPS + 1 }, (_, n) => {
      const angle = from + ((to - from) * n) / STEPS;
      return at(a * Math.cos(angle), -b * Math.sin(angle));
    });
  const barAt = (b: number) => Math.asin(BAR / b);
  const end = 2 * Math.PI - OPEN;
  const ring = [...ellipse(ACROSS, 0.5, -barAt(0.5), end), ...ellipse(innerX, innerY, end, Math.PI + barAt(innerY))];
  const above = ellipse(innerX, innerY, barAt(innerY), Math.PI - barAt(innerY));
  return { kind: "shape", outlines: [ring, above] };
}
