import { readFileSync } from "node:fs";
import { deflateSync, inflateSync } from "node:zlib";

import type { Plugin } from "vite";

const NAME = "virtual:label-font";
const MADE = `\0${NAME}`;
const FOLDER = new URL("../node_modules/@fontsource/roboto-condensed/", import.meta.url);
/** What a printed page needs of a font: the rest (kerning, ligatures) would move letters that have been measured without it. */
const KEPT = ["OS/2", "cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp", "name", "post"];

/** The letters of labels, as a module: both weights as a TrueType file (zlib, base64), which is what a PDF takes in, and the width of
 * each letter in thousandths of its size, so that a label can be laid out without a page to measure on. */
export function labelFont(): Plugin {
  return {
    name: "label-font",
    resolveId: (id) => (id === NAME ? MADE : null),
    load: (id) => (id === MADE ? `export const letters = ${JSON.stringify(LETTERS)};\nexport const regular = ${JSON.stringify(face(400))};\nexport const bold = ${JSON.stringify(face(700))};` : null),
  };
}

/** By byte, from 32: what a PDF calls WinAnsi (ISO 32000-1, annex D). Node's own decoder takes the row from 128 for ISO 8859-1. */
const FROM_128 = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ";
const LATIN = (first: number, last: number) => String.fromCharCode(...Array.from({ length: last - first + 1 }, (_, i) => first + i));
const LETTERS = LATIN(32, 127) + FROM_128 + LATIN(160, 255);

function face(weight: number) {
  const tables = tablesOf(readFileSync(new URL(`files/roboto-condensed-latin-${weight}-normal.woff`, FOLDER)));
  const of = (name: string) => tables.get(name) as Buffer;
  const em = of("head").readUInt16BE(18);
  const thousandths = (units: number) => Math.round((units * 1000) / em);
  const file = sfnt([...tables].filter(([name]) => KEPT.includes(name)));
  return {
    widths: [...LETTERS].map((letter) => thousandths(advance(of, letter.codePointAt(0) as number))),
    xHeight: thousandths(of("OS/2").readInt16BE(86)),
    capHeight: thousandths(of("OS/2").readInt16BE(88)),
    ascent: thousandths(of("hhea").readInt16BE(4)),
    descent: thousandths(of("hhea").readInt16BE(6)),
    bytes: file.length,
    file: deflateSync(file, { level: 9 }).toString("base64"),
  };
}

/** The tables of a WOFF file (W3C, WOFF 1.0). */
function tablesOf(woff: Buffer): Map<string, Buffer> {
  const tables = new Map<string, Buffer>();
  for (let at = 44; at < 44 + 20 * woff.readUInt16BE(12); at += 20) {
    const [start, packed, length] = [4, 8, 12].map((more) => woff.readUInt32BE(at + more)) as [number, number, number];
    const bytes = woff.subarray(start, start + packed);
    tables.set(woff.toString("latin1", at, at + 4), packed < length ? inflateSync(bytes) : bytes);
  }
  return tables;
}

/** How far a letter moves the next one; 0: the font has no such letter. */
function advance(of: (name: string) => Buffer, code: number): number {
  const glyph = glyphOf(of("cmap"), code);
  const last = of("hhea").readUInt16BE(34) - 1;
  return glyph === 0 ? 0 : of("hmtx").readUInt16BE(4 * Math.min(glyph, last));
}

/** The number of a letter's glyph by a table of format 4; 0: none. */
function glyphOf(cmap: Buffer, code: number): number {
  const starts = Array.from({ length: cmap.readUInt16BE(2) }, (_, i) => cmap.readUInt32BE(8 + 8 * i));
  const table = cmap.subarray(starts.find((start) => cmap.readUInt16BE(start) === 4));
  const twice = table.readUInt16BE(6);
  for (let at = 14; at < 14 + twice; at += 2) {
    if (table.readUInt16BE(at) < code) continue;
    const [first, delta, offset] = [1, 2, 3].map((n) => table.readUInt16BE(at + n * twice + (n > 0 ? 2 : 0))) as [number, number, number];
    if (first > code) return 0;
    if (offset === 0) return (code + delta) & 0xffff;
    const found = table.readUInt16BE(at + 3 * twice + 2 + offset + 2 * (code - first));
    return found === 0 ? 0 : (found + delta) & 0xffff;
  }
  return 0;
}

/** A TrueType file of some tables (OpenType specification, "Organization of an OpenType font"). */
function sfnt(tables: [string, Buffer][]): Buffer {
  const power = Math.floor(Math.log2(tables.length));
  const head = Buffer.alloc(12 + 16 * tables.length);
  head.writeUInt32BE(0x00010000, 0);
  for (const [at, value] of [[4, tables.length], [6, 16 << power], [8, power], [10, 16 * tables.length - (16 << power)]] as const) head.writeUInt16BE(value, at);
  const parts = [head];
  let start = head.length;
  tables.sort(([a], [b]) => (a < b ? -1 : 1)).forEach(([name, bytes], i) => {
    const padded = Buffer.concat([bytes], Math.ceil(bytes.length / 4) * 4);
    head.write(name, 12 + 16 * i, "latin1");
    [checksum(padded), start, bytes.length].forEach((value, n) => head.writeUInt32BE(value, 16 + 16 * i + 4 * n));
    parts.push(padded);
    start += padded.length;
  });
  return Buffer.concat(parts);
}

function checksum(bytes: Buffer): number {
  let sum = 0;
  for (let at = 0; at < bytes.length; at += 4) sum = (sum + bytes.readUInt32BE(at)) >>> 0;
  return sum;
}
