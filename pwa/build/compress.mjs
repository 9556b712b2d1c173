/** Compresses the built app once (.gz, .br) and says what a first visit costs: `node build/compress.mjs`. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const DIST = new URL("../dist/", import.meta.url);
const TEXT = /\.(html|js|css|svg|wasm|mpy|webmanifest|json)$/;
/** Everything that is compressed is stored on the first visit; the install icons are the system's affair (bytes).
 * Counted as brotli: every browser asks for that wherever the app can be kept, over HTTPS or on this computer. */
const MOST_FIRST_LOAD = 400_000;

/** Ways to write distances (postfix bits, direct codes; RFC 7932, section 4); which is shortest is found by trying. */
const DISTANCES = [
  [0, 0],
  [1, 0],
  [1, 24],
];

function brotli(raw) {
  const tried = DISTANCES.map(([postfix, direct]) =>
    brotliCompressSync(raw, {
      params: {
        [constants.BROTLI_PARAM_QUALITY]: 11,
        [constants.BROTLI_PARAM_SIZE_HINT]: raw.length,
        [constants.BROTLI_PARAM_NPOSTFIX]: postfix,
        [constants.BROTLI_PARAM_NDIRECT]: direct,
      },
    }),
  );
  return tried.reduce((least, one) => (one.length < least.length ? one : least));
}

const sizes = { raw: 0, gz: 0, br: 0 };
for (const name of readdirSync(DIST, { recursive: true }).sort()) {
  if (!TEXT.test(name)) continue;
  const raw = readFileSync(new URL(name, DIST));
  const gz = gzipSync(raw, { level: 9 });
  const br = brotli(raw);
  writeFileSync(new URL(`${name}.gz`, DIST), gz);
  writeFileSync(new URL(`${name}.br`, DIST), br);
  sizes.raw += raw.length;
  sizes.gz += gz.length;
  sizes.br += br.length;
}
const kb = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;
console.log(`first load: ${kb(sizes.raw)} raw, ${kb(sizes.gz)} gzip, ${kb(sizes.br)} brotli`);
if (sizes.br > MOST_FIRST_LOAD) {
  console.error(`first load is above ${kb(MOST_FIRST_LOAD)} (brotli)`);
  process.exit(1);
}
