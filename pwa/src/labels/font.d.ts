/** Made by `build/labelFont.ts`. */
declare module "virtual:label-font" {
  interface Face {
    /** By the letters' place in `letters`, in thousandths of the size; 0: no such letter. */
    widths: number[];
    /** In thousandths of the size. */
    xHeight: number;
    capHeight: number;
    ascent: number;
    descent: number;
    /** The TrueType file as zlib in base64, and how long it is unpacked. */
    file: string;
    bytes: number;
  }
  /** The letters there are, by their byte in a PDF's WinAnsi from 32 on. */
  export const letters: string;
  export const regular: Face;
  export const bold: Face;
}
