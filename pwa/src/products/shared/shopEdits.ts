import { signal } from "@preact/signals";

import type { ShopEdit } from "../../documents";
import { editShop } from "../../state";

/** The last change made here, in words, and the edits that take it back. */
export const lastChange = signal<{ words: string; back: ShopEdit[] } | null>(null);

/** Writes edits and offers to take them back. */
export async function writeEdits(edits: ShopEdit[], words: string, back: ShopEdit[]): Promise<void> {
  if (edits.length === 0) return;
  await editShop(edits);
  lastChange.value = { words, back };
}

export async function undoLastChange(): Promise<void> {
  const last = lastChange.value;
  if (last) await editShop(last.back);
  // Until then a tap on it says the same once more.
  if (lastChange.value === last) lastChange.value = null;
}
