import { signal } from "@preact/signals";

import { onReturn, phoneNow } from "../platform/clock";

/** The phone's clock error against the server (ms), as estimated; 0 until the first estimate. */
export const offsetMs = signal(0);

/** Corrected time (ms), ticking a few times a second: draw countdowns from it. */
export const now = signal(phoneNow());

const TICK_MS = 250;

/** Corrected time at this very moment (ms). */
export function correctedNow(): number {
  return phoneNow() + offsetMs.value;
}

function tick(): void {
  now.value = correctedNow();
}

/** Starts the ticking. */
export function startTicking(): void {
  setInterval(tick, TICK_MS);
  onReturn(tick);
}

/** Takes a new estimate of the clock error. */
export function setOffset(ms: number): void {
  if (ms === offsetMs.value) return;
  offsetMs.value = ms;
  tick();
}
