/** Where the keys of a keypad have lain within the last seconds: a finger that goes on typing must not undo. */

/** So long a tap may still be meant for a key that is gone (ms; assumed). */
const RESTS_MS = 3_000;

let keys: DOMRect | null = null;
let seenMs = -Infinity;

/** Remembers where the keys lie now. */
export function keysLie(element: Element): void {
  [keys, seenMs] = [element.getBoundingClientRect(), Date.now()];
}

/** Whether a key lay under part of an element within the last seconds. */
export function hasKeyLain(element: Element): boolean {
  if (keys === null || Date.now() - seenMs > RESTS_MS) return false;
  const at = element.getBoundingClientRect();
  return at.left < keys.right && at.right > keys.left && at.top < keys.bottom && at.bottom > keys.top;
}
