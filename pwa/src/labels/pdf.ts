import type { Command, Drawing, Page } from "./drawing";
import { bytesOf, faceOf } from "./letters";

const POINTS_A_MM = 72 / 25.4;
const ENTITIES = { catalog: 1, pages: 2, regular: 3, bold: 6 };
/** What the two fonts take: font, descriptor, file. */
const AFTER_FONTS = 9;

/** Pages as a PDF file at their true size (ISO 32000-1): both fonts within, each drawing once however often it lies on a page. A reader
 * that heeds it prints without scaling. */
export function pdf(pages: Page[], title: string): Uint8Array<ArrayBuffer> {
  const drawings = [...new Set(pages.flatMap((page) => page.placed.map((one) => one.drawing)))];
  const first = AFTER_FONTS + drawings.length;
  const kids = pages.map((_, i) => `${first + 2 * i} 0 R`).join(" ");
  const objects = [
    `<< /Type /Catalog /Pages ${ENTITIES.pages} 0 R /ViewerPreferences << /PrintScaling /None /DisplayDocTitle true >> >>`,
    `<< /Type /Pages /Kids [${kids}] /Count ${pages.length} >>`,
    ...font(false),
    ...font(true),
    ...drawings.map(form),
    ...pages.flatMap((page, i) => pageObjects(page, drawings, first + 2 * i)),
    `<< /Title ${hex([...title].map((letter) => bytesOf(letter)?.[0] ?? 63))} /Producer (Amberbench) >>`,
  ];
  return file(objects);
}

function font(isBold: boolean): string[] {
  const { widths, ascent, descent, capHeight, bytes, file: packed } = faceOf(isBold);
  const number = isBold ? ENTITIES.bold : ENTITIES.regular;
  const name = `RobotoCondensed-${isBold ? "Bold" : "Regular"}`;
  return [
    `<< /Type /Font /Subtype /TrueType /BaseFont /${name} /Encoding /WinAnsiEncoding /FirstChar 32 /LastChar 255 /Widths [${widths.join(" ")}] /FontDescriptor ${number + 1} 0 R >>`,
    `<< /Type /FontDescriptor /FontName /${name} /Flags 32 /FontBBox [-250 ${descent} 1250 ${ascent}] /ItalicAngle 0 /Ascent ${ascent} /Descent ${descent} /CapHeight ${capHeight} /StemV ${isBold ? 140 : 80} /FontFile2 ${number + 2} 0 R >>`,
    stream(`/Filter /FlateDecode /Length1 ${bytes}`, atob(packed)),
  ];
}

function form({ width, height, commands }: Drawing): string {
  const resources = `/Resources << /Font << /F0 ${ENTITIES.regular} 0 R /F1 ${ENTITIES.bold} 0 R >> >>`;
  return stream(`/Type /XObject /Subtype /Form /BBox [0 0 ${points(width)} ${points(height)}] ${resources}`, commands.map((one) => operators(one, height)).join("\n"));
}

function operators(one: Command, height: number): string {
  if (one.kind === "box") return `${[one.x, height - one.y - one.height, one.width, one.height].map(points).join(" ")} re f`;
  if (one.kind === "shape") return `${one.outlines.map((line) => line.map(([x, y], i) => `${points(x)} ${points(height - y)} ${i ? "l" : "m"}`).join(" ")).join(" h ")} h f*`;
  return `BT /F${one.bold ? 1 : 0} ${points(one.size)} Tf ${points(one.x)} ${points(height - one.y)} Td ${hex(bytesOf(one.text) ?? [])} Tj ET`;
}

function pageObjects({ width, height, placed }: Page, drawings: Drawing[], number: number): string[] {
  const used = [...new Set(placed.map((one) => drawings.indexOf(one.drawing)))];
  const names = used.map((n) => `/D${n} ${AFTER_FONTS + n} 0 R`).join(" ");
  const put = placed.map(({ drawing, x, y }) => `q 1 0 0 1 ${points(x)} ${points(height - y - drawing.height)} cm /D${drawings.indexOf(drawing)} Do Q`);
  return [
    `<< /Type /Page /Parent ${ENTITIES.pages} 0 R /MediaBox [0 0 ${points(width)} ${points(height)}] /Resources << /XObject << ${names} >> >> /Contents ${number + 1} 0 R >>`,
    stream("", put.join("\n")),
  ];
}

function points(mm: number): string {
  return String(Math.round(mm * POINTS_A_MM * 1000) / 1000);
}

function hex(bytes: number[]): string {
  return `<${bytes.map((byte) => byte.toString(16).padStart(2, "0")).join("")}>`;
}

function stream(more: string, content: string): string {
  return `<< ${more} /Length ${content.length} >>\nstream\n${content}\nendstream`;
}

/** The objects, numbered from 1, with their table of places; every character is a byte. The last is the information, the first the catalog. */
function file(objects: string[]): Uint8Array<ArrayBuffer> {
  let text = "%PDF-1.4\n%\u00e2\u00e3\u00cf\u00d3\n";
  const places = objects.map((body, i) => {
    const at = text.length;
    text += `${i + 1} 0 obj\n${body}\nendobj\n`;
    return `${String(at).padStart(10, "0")} 00000 n \n`;
  });
  const table = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${places.join("")}`;
  text += `trailer\n<< /Size ${objects.length + 1} /Root ${ENTITIES.catalog} 0 R /Info ${objects.length} 0 R >>\nstartxref\n${table}\n%%EOF\n`;
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}
