/** The longest side kept (px): bubbles and grain of a slab are still seen, and a picture stays some 300 kB. */
const LONGEST_PX = 1600;
/** The server takes no more (bytes). */
const MOST_BYTES = 2 * 1024 * 1024;
/** JPEG qualities, the first that is small enough counts. */
const QUALITIES = [0.8, 0.6, 0.4];

interface Picture {
  blob: Blob;
  width_px: number;
  height_px: number;
}

/** A photo made smaller and encoded anew as JPEG, upright: what a camera adds (where, when, which phone) is not in it.
 * Rejects when the file is no picture that this browser can read. */
export async function shrinkPhoto(file: Blob): Promise<Picture> {
  const bitmap = await createImageBitmap(file, { imageOrientation: "from-image" });
  const scale = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.max(1, Math.round(bitmap.width * scale));
  canvas.height = Math.max(1, Math.round(bitmap.height * scale));
  const brush = canvas.getContext("2d");
  if (!brush) throw new Error("no canvas to draw on");
  brush.imageSmoothingQuality = "high";
  brush.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
  bitmap.close();
  for (const quality of QUALITIES) {
    const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, "image/jpeg", quality));
    if (blob?.type === "image/jpeg" && blob.size <= MOST_BYTES)
      return { blob, width_px: canvas.width, height_px: canvas.height };
  }
  throw new Error("no JPEG small enough");
}
