/** Reads QR codes, Data Matrix and bar codes off a picture. A file of its own, fetched when somebody first opens the camera. */
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import reader from "zxing-wasm/reader/zxing_reader.wasm?url";

prepareZXingModule({ overrides: { locateFile: (path: string) => (path.endsWith(".wasm") ? reader : path) } });

/** The text of the first code in a picture, as it stands in the code (GS1: groups end with U+001D); null: there is none. */
export async function readCode(picture: ImageData): Promise<string | null> {
  const found = await readBarcodes(picture, { formats: ["QRCode", "DataMatrix", "Code128", "EAN13"], maxNumberOfSymbols: 1, textMode: "Plain" });
  return found.find((one) => one.isValid && one.text)?.text ?? null;
}
