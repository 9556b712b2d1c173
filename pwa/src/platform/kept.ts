const PREFIX = "amberbench half-made ";
/** Until when something half made is still wanted: the same working day (ms). */
const DAY_MS = 12 * 3_600_000;

/** Keeps something half made on this device; where the browser keeps nothing, it is gone with the page. */
export function keepHalfMade(name: string, value: unknown): void {
  try {
    if (value === null) localStorage.removeItem(PREFIX + name);
    else localStorage.setItem(PREFIX + name, JSON.stringify({ at_ms: Date.now(), value }));
  } catch {
    // No room, or not allowed: the form starts anew next time.
  }
}

/** What was kept under a name today; null: nothing. */
export function halfMade<T>(name: string): T | null {
  try {
    const kept = JSON.parse(localStorage.getItem(PREFIX + name) ?? "null") as { at_ms: number; value: T } | null;
    return kept && Math.abs(Date.now() - kept.at_ms) < DAY_MS ? kept.value : null;
  } catch {
    return null;
  }
}
