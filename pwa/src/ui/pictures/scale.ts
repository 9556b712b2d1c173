/** A straight map from a span of values to a span of pixels. */
export type Scale = (value: number) => number;

export function linear(from: readonly [number, number], to: readonly [number, number]): Scale {
  const span = from[1] - from[0] || 1;
  return (value) => to[0] + ((value - from[0]) / span) * (to[1] - to[0]);
}

/** Round steps that give at most `most` ticks over a span: 1, 2, 5, 10, 20, … */
export function ticks(low: number, high: number, most: number): number[] {
  const step = roundStep((high - low) / Math.max(1, most));
  const found: number[] = [];
  for (let value = Math.ceil(low / step) * step; value <= high + step * 1e-9; value += step) found.push(value);
  return found;
}

function roundStep(least: number): number {
  if (!(least > 0)) return 1;
  const power = 10 ** Math.floor(Math.log10(least));
  return [1, 2, 5, 10].map((times) => times * power).find((step) => step >= least) ?? 10 * power;
}

/** Steps for an axis of time, in seconds: whole parts of an hour that give at most `most` ticks. */
export function timeStep(span_s: number, most: number): number {
  const steps = [60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800];
  return steps.find((step) => span_s / step <= most) ?? 86400;
}

export function path(points: readonly (readonly [number, number])[]): string {
  return points.map(([x, y], i) => `${i ? "L" : "M"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");
}
