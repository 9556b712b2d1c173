import type { SoundName } from "../documents";
import { FIGURES, VIBRATIONS } from "./tones";
import { vibrate } from "./vibration";

let context: AudioContext | null = null;
let playing: { gain: GainNode | null; timer: ReturnType<typeof setInterval> } | null = null;

/** Sound may start only after a tap, and the system may interrupt it at any time: so every tap unlocks it anew. */
export function unlockSoundOnTap(): void {
  for (const kind of ["pointerdown", "keydown"] as const)
    window.addEventListener(kind, () => void unlock(), { capture: true, passive: true });
}

async function unlock(): Promise<void> {
  try {
    // Heard although the mute switch is on, where the browser knows of audio sessions.
    const session = (navigator as { audioSession?: { type: string } }).audioSession;
    if (session) session.type = "playback";
    context ??= typeof AudioContext === "undefined" ? null : new AudioContext();
    if (context && context.state !== "running") await context.resume();
  } catch {
    // No sound on this device: the screen and the vibration still tell.
  }
}

/** Plays a sound over and over until `stopSound`; another one replaces it. */
export function startSound(name: SoundName): void {
  stopSound();
  const { every } = FIGURES[name];
  const gain = context ? loud(context) : null;
  const once = () => {
    if (context && gain) schedule(context, gain, name);
    vibrate(VIBRATIONS[name]);
  };
  once();
  playing = { gain, timer: setInterval(once, every * 1000) };
}

export function stopSound(): void {
  if (!playing) return;
  clearInterval(playing.timer);
  playing.gain?.disconnect();
  playing = null;
  vibrate(0);
}

/** One figure of a sound, for the sound test. Called from a tap, so it may start the audio itself. */
export async function testSound(name: SoundName): Promise<void> {
  await unlock();
  if (context) schedule(context, loud(context), name);
  vibrate(VIBRATIONS[name]);
}

function loud(audio: AudioContext): GainNode {
  const gain = audio.createGain();
  gain.gain.value = 0.9;
  gain.connect(audio.destination);
  return gain;
}

function schedule(audio: AudioContext, out: GainNode, name: SoundName): void {
  const start = audio.currentTime + 0.01;
  for (const { hz, at, length } of FIGURES[name].tones) {
    const oscillator = audio.createOscillator();
    const edge = audio.createGain();
    // A triangle carries further than a sine; soft edges keep it from clicking.
    oscillator.type = "triangle";
    oscillator.frequency.value = hz;
    edge.gain.setValueAtTime(0, start + at);
    edge.gain.linearRampToValueAtTime(1, start + at + 0.008);
    edge.gain.setValueAtTime(1, start + at + length - 0.01);
    edge.gain.linearRampToValueAtTime(0, start + at + length);
    oscillator.connect(edge).connect(out);
    oscillator.start(start + at);
    oscillator.stop(start + at + length);
  }
}
