import type { Command, Page } from "./drawing";
import { faceOf } from "./letters";

/** A family of its own: the preview shows the letters that are printed, not the system's. */
export const FAMILY = "Amberbench label";
/** Units of a millimetre: browsers round the places of letters to whole units. */
const FINE = 100;

/** A page as SVG, for the screen. Letters keep the widths they are printed with: a coarse screen would round each to whole pixels. */
export function svg(page: Page): string {
  const { width, height } = page;
  const placed = page.placed.map(({ drawing, x, y }) => `<g transform="translate(${fine(x)} ${fine(y)})">${drawing.commands.map(element).join("")}</g>`);
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${fine(width)} ${fine(height)}" text-rendering="geometricPrecision" font-family="'${FAMILY}'" fill="#000"><rect width="100%" height="100%" fill="#fff"/>${placed.join("")}</svg>`;
}

function element(one: Command): string {
  if (one.kind === "box") return `<rect x="${fine(one.x)}" y="${fine(one.y)}" width="${fine(one.width)}" height="${fine(one.height)}"/>`;
  if (one.kind === "shape") return `<path fill-rule="evenodd" d="${one.outlines.map((line) => `M${line.map(([x, y]) => `${fine(x)} ${fine(y)}`).join("L")}Z`).join("")}"/>`;
  return `<text x="${fine(one.x)}" y="${fine(one.y)}" font-size="${fine(one.size)}"${one.bold ? ' font-weight="700"' : ""} xml:space="preserve">${escaped(one.text)}</text>`;
}

function fine(mm: number): number {
  return Math.round(mm * FINE);
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (one) => `&#${one.charCodeAt(0)};`);
}

/** Gives the page the letters of labels, once. */
export async function loadLetters(): Promise<void> {
  if ([...document.fonts].some((one) => one.family.includes(FAMILY))) return;
  const faces = [false, true].map(async (isBold) => new FontFace(FAMILY, await unpacked(faceOf(isBold).file), { weight: isBold ? "700" : "400" }).load());
  for (const face of await Promise.all(faces)) document.fonts.add(face);
}

async function unpacked(file: string): Promise<ArrayBuffer> {
  const packed = Uint8Array.from(atob(file), (letter) => letter.charCodeAt(0));
  return new Response(new Blob([packed]).stream().pipeThrough(new DecompressionStream("deflate"))).arrayBuffer();
}
