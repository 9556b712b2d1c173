/** Vibrates by a pattern of ms on and off; 0 stops. Phones without it (all iPhones) do nothing. */
export function vibrate(pattern: number[] | 0): void {
  // Before the first tap it is forbidden, and asking would only fill the log: the screen still tells.
  const { userActivation } = navigator as { userActivation?: { hasBeenActive: boolean } };
  if (userActivation && !userActivation.hasBeenActive) return;
  (navigator as { vibrate?: (pattern: number[] | number) => boolean }).vibrate?.(pattern);
}
