import type { SoundName } from "../documents";

/** One tone: pitch (Hz), when it begins and how long it lasts (s). */
interface Tone {
  hz: number;
  at: number;
  length: number;
}

/** One figure of a sound and when it is played again (s). */
interface Figure {
  tones: readonly Tone[];
  every: number;
}

/** Four sounds, each told from the others within its first half second by rhythm and direction, not by pitch alone.
 * All between 500 and 3000 Hz, where a phone's loudspeaker and the ear are at their best beside a running fan. */
export const FIGURES: Record<SoundName, Figure> = {
  // Two even strokes, down and up, round and round.
  stir: { tones: tones([1047, 784, 1047, 784], 0.14, 0.11), every: 1.4 },
  // Three short ticks on one pitch, then a pause.
  read: { tones: tones([1760, 1760, 1760], 0.1, 0.05), every: 1.3 },
  // A long call that climbs.
  ready: { tones: [tone(659, 0, 0.2), tone(988, 0.22, 0.2), tone(1319, 0.44, 0.5)], every: 1.9 },
  // A fast siren without a gap.
  too_hot: { tones: tones([2600, 1950, 2600, 1950, 2600, 1950], 0.1, 0.1), every: 0.6 },
};

function tone(hz: number, at: number, length: number): Tone {
  return { hz, at, length };
}

function tones(pitches: number[], step: number, length: number): Tone[] {
  return pitches.map((hz, index) => tone(hz, index * step, length));
}

/** Vibration for each sound, in ms on and off, for phones that can; repeated with the sound. */
export const VIBRATIONS: Record<SoundName, number[]> = {
  stir: [200, 100, 200, 100],
  read: [80, 60, 80, 60, 80],
  ready: [600],
  too_hot: [250, 50, 250, 50],
};
