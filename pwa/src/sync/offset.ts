/** The phone's clock against the server's: the four time stamps of RFC 5905 §8, all in ms. */

export interface Sample {
  /** Server minus phone. */
  offsetMs: number;
  roundTripMs: number;
}

/** t1 sent by the phone, t2 received and t3 answered by the server, t4 back at the phone.
 * The error is at most half the round trip. */
export function sample(t1: number, t2: number, t3: number, t4: number): Sample {
  return { offsetMs: (t2 - t1 + (t3 - t4)) / 2, roundTripMs: t4 - t1 - (t3 - t2) };
}

/** How many samples are looked at together, as NTP's clock filter does. */
const REMEMBERED = 8;

/** Keeps the offset in force and improves it: the sample with the shortest round trip counts, and a difference that
 * lies within that sample's own error changes nothing, so that running clocks do not jitter. */
export class OffsetFilter {
  private samples: Sample[] = [];

  constructor(public offsetMs: number | null = null) {}

  add(one: Sample): number {
    // The phone's clock was set meanwhile: older samples tell of another clock.
    const last = this.samples.at(-1);
    if (last && Math.abs(last.offsetMs - one.offsetMs) > (last.roundTripMs + one.roundTripMs) / 2 + 1) this.samples = [];
    this.samples = [...this.samples, one].slice(-REMEMBERED);
    const best = this.samples.reduce((a, b) => (b.roundTripMs < a.roundTripMs ? b : a));
    if (this.offsetMs === null || Math.abs(best.offsetMs - this.offsetMs) > best.roundTripMs / 2)
      this.offsetMs = Math.round(best.offsetMs);
    return this.offsetMs;
  }
}
