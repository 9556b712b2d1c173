import { readFile } from "node:fs/promises";

import type { Plugin } from "vite";

import phone from "../package.json" with { type: "json" };
import micropython from "@micropython/micropython-webassembly-pyscript/package.json" with { type: "json" };

export const NOTICES = "notices.txt";

/** Completes the notices that Vite writes of the bundled packages: our own licence goes first, and last those of what is
 * shipped as somebody else made it: the letters of labels, and what brings no licence along. Fails when they are of another MicroPython. */
export function notices(): Plugin {
  return {
    name: "notices",
    generateBundle: {
      order: "post",
      async handler(_options, bundle) {
        const written = bundle[NOTICES];
        const own = await readFile(new URL("../../LICENSE", import.meta.url), "utf8");
        const letters = await readFile(new URL("../node_modules/@fontsource/roboto-condensed/LICENSE", import.meta.url), "utf8");
        const prebuilt = await readFile(new URL("prebuilt_notices.txt", import.meta.url), "utf8");
        if (!prebuilt.includes(`MicroPython ${micropython.version},`)) this.error("prebuilt_notices.txt tells of another MicroPython");
        if (!prebuilt.includes(`ZXing-C++, in zxing-wasm ${phone.dependencies["zxing-wasm"]}`)) this.error("prebuilt_notices.txt tells of another zxing-wasm");
        const apache = await readFile(new URL("apache-2.0.txt", import.meta.url), "utf8");
        if (written?.type !== "asset") return this.error(`Vite wrote no ${NOTICES}`);
        written.source = `# Amberbench\n\n${own}\n${written.source.toString()}\n## Roboto Condensed, the letters of labels\n\n${letters}\n${prebuilt}\n${apache}`;
      },
    },
  };
}
