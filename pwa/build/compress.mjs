/** Compresses the built app once (.gz, .br) and says what a first visit and every place cost: `node build/compress.mjs`. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { brotliCompressSync, constants, gzipSync } from "node:zlib";

const DIST = new URL("../dist/", import.meta.url);
const TEXT = /\.(html|js|css|svg|wasm|mpy|webmanifest|json)$/;
/** What a first visit waits for: what is compressed, without the places beside the bench, and of the texts those of one language
 * with its variants; the rest follows, and the install icons are the system's affair (bytes). Counted for the language with the longest texts, as brotli: every browser
 * asks for that wherever the app can be kept, over HTTPS or on this computer. */
const MOST_FIRST_LOAD = 400_000;
/** What a place may cost more (bytes, as brotli). */
const MOST_PLACE = 150_000;
/** What `src/sw/sw.ts` stores later: the place, or the language of texts. */
const LATER = /^assets\/(?:(place-)?text-([a-z]+)|place-([a-z]+)|demo_shop|scan-)[^/]*\.(?:js|css|mpy|wasm)$/;
/** What several places share: each of them is counted with it. */
const SHARED = "shared";

/** Ways to write distances (postfix bits, direct codes; RFC 7932, section 4); which is shortest is found by trying. */
const DISTANCES = [
  [0, 0],
  [1, 0],
  [1, 24],
  [0, 8],
];
/** Sizes of a block (bits; 0: chosen by size). */
const BLOCKS = [0, 16];

/** What nobody waits for at the first visit takes the usual way: trying takes as long again for every way. */
const NOT_WAITED_FOR = /^assets\/(?:place-(?!text-)|demo_shop|scan-)/;

function brotli(raw, name) {
  const every = DISTANCES.flatMap(([postfix, direct]) => BLOCKS.map((block) => [postfix, direct, block]));
  const ways = NOT_WAITED_FOR.test(name) ? every.slice(0, 1) : every;
  const tried = ways.map(([postfix, direct, block]) =>
    brotliCompressSync(raw, {
      params: {
        [constants.BROTLI_PARAM_QUALITY]: 11,
        [constants.BROTLI_PARAM_SIZE_HINT]: raw.length,
        [constants.BROTLI_PARAM_LGBLOCK]: block,
        [constants.BROTLI_PARAM_NPOSTFIX]: postfix,
        [constants.BROTLI_PARAM_NDIRECT]: direct,
      },
    }),
  );
  return tried.reduce((least, one) => (one.length < least.length ? one : least));
}

function add(to, sizes) {
  for (const kind of Object.keys(to)) to[kind] += sizes[kind];
}

const [first, rest] = [0, 1].map(() => ({ raw: 0, gz: 0, br: 0 }));
const texts = {};
const placeTexts = {};
const places = {};
for (const name of readdirSync(DIST, { recursive: true }).sort()) {
  if (!TEXT.test(name)) continue;
  const raw = readFileSync(new URL(name, DIST));
  const gz = gzipSync(raw, { level: 9 });
  const br = brotli(raw, name);
  writeFileSync(new URL(`${name}.gz`, DIST), gz);
  writeFileSync(new URL(`${name}.br`, DIST), br);
  const later = LATER.exec(name);
  const [, ofPlaces, language, place] = later ?? [];
  const none = { raw: 0, gz: 0, br: 0 };
  const [of, counts] = place ? [place, places] : [language, ofPlaces ? placeTexts : texts];
  add(of ? (counts[of] ??= none) : later ? rest : first, { raw: raw.length, gz: gz.length, br: br.length });
}
/** Adds the texts of the language that has most; those of the others come later. */
function addLongest(to, counts) {
  const [longest, ...others] = Object.values(counts).sort((a, b) => b.br - a.br);
  add(to, longest);
  for (const other of others) add(rest, other);
}
addLongest(first, texts);
addLongest(places[SHARED], placeTexts);
const kb = (bytes) => `${(bytes / 1000).toFixed(1)} kB`;
const told = ({ raw, gz, br }) => `${kb(raw)} raw, ${kb(gz)} gzip, ${kb(br)} brotli`;
console.log(`first load: ${told(first)}; the rest: ${told(rest)}`);
if (first.br > MOST_FIRST_LOAD) {
  console.error(`first load is above ${kb(MOST_FIRST_LOAD)} (brotli)`);
  process.exitCode = 1;
}
const { [SHARED]: shared, ...own } = places;
for (const [name, place] of Object.entries(own)) {
  add(place, shared);
  console.log(`place ${name}: ${told(place)}`);
  if (place.br <= MOST_PLACE) continue;
  console.error(`place ${name} is above ${kb(MOST_PLACE)} (brotli)`);
  process.exitCode = 1;
}
