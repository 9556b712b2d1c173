/** Vibrates by a pattern of ms on and off; 0 stops. Phones without it (all iPhones) do nothing. */
export function vibrate(pattern: number[] | 0): void {
  try {
    (navigator as { vibrate?: (pattern: number[] | number) => boolean }).vibrate?.(pattern);
  } catch {
    // Forbidden before the first tap: the screen still tells.
  }
}
