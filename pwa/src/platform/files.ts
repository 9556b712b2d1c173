/** Hands a text to the person as a file. */
export function saveFile(name: string, type: string, text: string): void {
  saveBlob(name, new Blob([text], { type }));
}

/** Saves a file among the downloads. */
function saveBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The download has begun by then; it need not stay in memory.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}

/** Hands a finished file to another app where the browser can, else saves it. Call it in a tap, with the file made before: after a
 * wait the browser no longer takes it for what the person wants. False: the person let it be. */
export async function handOver(file: File): Promise<boolean> {
  if (navigator.canShare?.({ files: [file] })) {
    try {
      await navigator.share({ files: [file], title: file.name });
      return true;
    } catch (error) {
      if ((error as DOMException).name === "AbortError") return false;
    }
  }
  saveBlob(file.name, file);
  return true;
}
