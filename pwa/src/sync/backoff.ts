const FIRST_MS = 1_000;
const LONGEST_MS = 60_000;
/** While all is well: how often to look for what other phones wrote. */
const CALM_MS = 15_000;

/** How long to wait after so many failures in a row: doubling, half of it by chance, lest all phones of a shop
 * return in the same second. `random` in 0..1. */
export function backoffMs(failures: number, random: number): number {
  if (failures === 0) return CALM_MS;
  const whole = Math.min(LONGEST_MS, FIRST_MS * 2 ** (failures - 1));
  return whole * (0.5 + 0.5 * random);
}
