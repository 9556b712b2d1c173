/** Net weight of a box from what the scale said. */
export function netOf(scale_kg: number, tare_kg: number | null, withBox: boolean): number {
  return withBox && tare_kg !== null ? Math.round((scale_kg - tare_kg) * 1e7) / 1e7 : scale_kg;
}
