/** Hands a text to the person as a file. */
export function saveFile(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  // The download has begun by then; the text need not stay in memory.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
