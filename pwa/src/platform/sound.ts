import type { SoundName } from "../documents";
import { allowAlarmElement, playAlarmElement, stopAlarmElement } from "./alarmElement";
import { onEveryTap } from "./userActivation";
import { FIGURES, VIBRATIONS } from "./tones";
import { vibrate } from "./vibration";

/** Whether sounds are heard: they are; not before a tap (or another one, after a call); a tap did not help. */
export type SoundState = "running" | "waiting" | "failed";

/** A tap that starts the audio does so within this time (ms). */
const STARTS_MS = 1_000;

let context: AudioContext | null = null;
/** Whether the last tap started it. */
let tapHelps = true;
let report: (state: SoundState) => void = () => {};
let playing: { gain: GainNode | null; timer: ReturnType<typeof setInterval> } | null = null;

/** Sound may start only after a tap, and the system may interrupt it at any time: so every tap unlocks it anew. */
export function unlockSoundOnTap(onState: (state: SoundState) => void): void {
  report = onState;
  onEveryTap(() => {
    void unlockSound(true);
    void allowAlarmElement();
  });
}

/** Starts the audio where a tap, or a browser that wants none, allows it. */
export async function unlockSound(byTap = false): Promise<void> {
  if (runs(context)) return;
  try {
    // Heard although the mute switch is on, where the browser knows of audio sessions.
    const session = (navigator as { audioSession?: { type: string } }).audioSession;
    if (session) session.type = "playback";
    context ??= newContext();
  } catch {
    return tell(byTap);
  }
  const asked = context;
  try {
    // Where it is not allowed, this stays open until it is.
    await Promise.race([asked.resume(), new Promise((done) => setTimeout(done, STARTS_MS))]);
  } catch {
    // One that cannot be resumed never will be: the next tap makes another.
    if (context === asked) context = null;
    void asked.close().catch(() => {});
  }
  tell(byTap);
}

function newContext(): AudioContext {
  const made = new AudioContext();
  made.addEventListener("statechange", () => tell(runs(made)));
  return made;
}

function runs(audio: AudioContext | null): audio is AudioContext {
  return audio?.state === "running";
}

/** A start without a tap that comes to nothing leaves it at what the last tap did. */
function tell(tried: boolean): void {
  if (tried) tapHelps = runs(context);
  report(runs(context) ? "running" : tapHelps ? "waiting" : "failed");
}

/** Plays a sound over and over until `stopSound`; another one replaces it. One that begins without audio is heard as soon as the
 * audio runs. */
export function startSound(name: SoundName): void {
  stopSound();
  const { every } = FIGURES[name];
  const once = () => {
    // A context that stands still would keep the tones and play them all at once.
    if (playing && runs(context)) schedule(context, (playing.gain ??= loud(context)), name);
    else playAlarmElement(name);
    vibrate(VIBRATIONS[name]);
  };
  playing = { gain: null, timer: setInterval(once, every * 1000) };
  once();
}

export function stopSound(): void {
  if (!playing) return;
  clearInterval(playing.timer);
  playing.gain?.disconnect();
  stopAlarmElement();
  playing = null;
  vibrate(0);
}

/** One figure of a sound, for the sound test. Called from a tap, so it may start the audio itself. */
export async function testSound(name: SoundName): Promise<void> {
  await unlockSound();
  if (runs(context)) schedule(context, loud(context), name);
  else playAlarmElement(name);
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
