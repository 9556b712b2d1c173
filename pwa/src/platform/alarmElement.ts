import type { SoundName } from "../documents";
import { FIGURES } from "./tones";

/** Samples a second: enough for the highest pitch (2.6 kHz) and its first overtone. */
const RATE = 16_000;
/** How long a tone takes to rise and to end, so that it does not click (s). */
const EDGE_S = 0.008;

let element: HTMLAudioElement | null = null;
const urls: Partial<Record<SoundName, string>> = {};

/** Called by a tap: from then on the element may play without one. Played in silence, for WebKit asks for it. */
export async function allowAlarmElement(): Promise<void> {
  if (element) return;
  const made = (element = new Audio());
  made.muted = true;
  made.src = urlOf("read");
  try {
    await made.play();
    if (made.muted) made.pause();
  } catch {
    element = null;
  }
}

/** One figure of a sound as media, which goes on where the system has stopped the audio context. */
export function playAlarmElement(name: SoundName): void {
  if (!element) return;
  element.muted = false;
  element.src = urlOf(name);
  void element.play().catch(() => {});
}

export function stopAlarmElement(): void {
  element?.pause();
}

function urlOf(name: SoundName): string {
  return (urls[name] ??= URL.createObjectURL(new Blob([wave(name)], { type: "audio/wav" })));
}

/** One figure as a WAV file: 8 bits without a sign, one channel (RIFF "WAVE", format 1). */
function wave(name: SoundName): Uint8Array<ArrayBuffer> {
  const { tones, every } = FIGURES[name];
  const size = Math.round(every * RATE);
  const file = new Uint8Array(44 + size).fill(128, 44);
  const head = new DataView(file.buffer);
  // "RIFF", its size, "WAVE", "fmt ", 16 bytes of format: PCM, one channel, rate, bytes a second; then "data".
  for (const [index, word] of [0x52494646, 0, 0x57415645, 0x666d7420, 0, 0, 0, 0, 0, 0x64617461].entries()) head.setUint32(4 * index, word);
  for (const [at, value] of [[4, 36 + size], [16, 16], [20, 0x10001], [24, RATE], [28, RATE], [32, 0x80001], [40, size]] as const) head.setUint32(at, value, true);
  for (const { hz, at, length } of tones)
    for (let step = 0; step < length * RATE; step++) {
      const s = step / RATE;
      const edge = Math.min(1, s / EDGE_S, (length - s) / EDGE_S);
      file[44 + Math.round(at * RATE) + step] = 128 + 115 * edge * (4 * Math.abs(((s * hz) % 1) - 0.5) - 1);
    }
  return file;
}
