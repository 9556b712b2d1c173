/** The camera as a source of pictures in which a code may be. */

/** The middle of the picture, so large: a code held before the camera fills it, and more takes longer to look through (px). */
const WIDE = 640;
const HIGH = 480;
/** Between two looks (ms). */
const LOOK_MS = 120;

export type NoCamera = "refused" | "none" | "not_loaded";

/** Shows the camera in a video element and tells the first code that is seen in it. Resolves to why not, where there is no camera or
 * what reads codes could not be fetched; null when `stop` ended it. */
export async function watchForCode(video: HTMLVideoElement, stop: AbortSignal, found: (text: string) => void): Promise<NoCamera | null> {
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment", width: { ideal: 1280 } } });
  } catch (error) {
    return (error as DOMException).name === "NotAllowedError" ? "refused" : "none";
  }
  const end = () => stream.getTracks().forEach((track) => track.stop());
  stop.addEventListener("abort", end);
  if (stop.aborted) end();
  try {
    video.srcObject = stream;
    await video.play();
    const { readCode } = await import("./codeReader");
    while (!stop.aborted) {
      const text = await readCode(middleOf(video));
      if (text !== null && !stop.aborted) return found(text), null;
      await new Promise((done) => setTimeout(done, LOOK_MS));
    }
    return null;
  } catch (error) {
    if (stop.aborted) return null;
    console.error("codes cannot be read:", error);
    return "not_loaded";
  } finally {
    end();
  }
}

function middleOf(video: HTMLVideoElement): ImageData {
  const canvas = new OffscreenCanvas(WIDE, HIGH);
  const brush = canvas.getContext("2d", { willReadFrequently: true })!;
  const { videoWidth: wide, videoHeight: high } = video;
  const share = Math.min(wide / WIDE, high / HIGH) || 1;
  brush.drawImage(video, (wide - WIDE * share) / 2, (high - HIGH * share) / 2, WIDE * share, HIGH * share, 0, 0, WIDE, HIGH);
  return brush.getImageData(0, 0, WIDE, HIGH);
}
