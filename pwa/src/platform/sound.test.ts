import { afterEach, beforeEach, expect, test, vi } from "vitest";

import type { SoundState } from "./sound";

/** An audio context as a browser gives it: it runs once it is resumed in an event that grants it. */
class Audio extends EventTarget {
  static made: Audio[] = [];
  static granted = false;
  static broken = false;
  state = "suspended";
  currentTime = 0;
  destination = {};
  tones = 0;
  private waiting: (() => void)[] = [];

  constructor() {
    super();
    Audio.made.push(this);
  }

  resume(): Promise<void> {
    if (Audio.broken) return Promise.reject(new DOMException("no", "InvalidStateError"));
    if (Audio.granted) this.becomes("running");
    if (this.state === "running") return Promise.resolve();
    return new Promise((done) => this.waiting.push(done));
  }

  becomes(state: string): void {
    this.state = state;
    this.dispatchEvent(new Event("statechange"));
    if (state === "running") for (const done of this.waiting.splice(0)) done();
  }

  close(): Promise<void> {
    return Promise.resolve();
  }

  createGain() {
    const gain = { value: 1, setValueAtTime: () => {}, linearRampToValueAtTime: () => {} };
    return { gain, connect: (next: unknown) => next, disconnect: () => {} };
  }

  createOscillator() {
    this.tones += 1;
    return { type: "", frequency: { value: 0 }, connect: (next: unknown) => next, start: () => {}, stop: () => {} };
  }
}

let states: SoundState[];
/** Takes the page's listeners away again: each test has a sound of its own. */
let forget: AbortController;
let sound: typeof import("./sound");

beforeEach(async () => {
  vi.useFakeTimers();
  Object.assign(Audio, { made: [], granted: false, broken: false });
  vi.stubGlobal("AudioContext", Audio);
  vi.resetModules();
  forget = new AbortController();
  const listen = window.addEventListener.bind(window);
  vi.spyOn(window, "addEventListener").mockImplementation((kind: string, heard: unknown, how: unknown) =>
    listen(kind, heard as EventListener, { ...(how as object), signal: forget.signal }),
  );
  sound = await import("./sound");
  states = [];
  sound.unlockSoundOnTap((state) => states.push(state));
});
afterEach(() => {
  sound.stopSound();
  forget.abort();
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** An event of the page, which grants what a browser grants in it, and time enough for the audio to start. */
async function does(kind: string, grants: boolean): Promise<void> {
  Audio.granted = grants;
  document.body.dispatchEvent(new Event(kind, { bubbles: true }));
  Audio.granted = false;
  await vi.advanceTimersByTimeAsync(1_100);
}

/** A finger as a phone takes it: coming down grants nothing. */
async function taps(): Promise<void> {
  await does("pointerdown", false);
  await does("pointerup", true);
}

test("a finger that goes up starts the sound", async () => {
  await taps();
  expect(states.at(-1)).toBe("running");
});

test.each(["click", "keydown"])("a %s starts the sound", async (kind) => {
  await does(kind, true);
  expect(states.at(-1)).toBe("running");
});

test("a tap that does not start the sound says so, and the next one tries again", async () => {
  await does("pointerup", false);
  expect(states.at(-1)).toBe("failed");
  await does("pointerup", true);
  expect(states.at(-1)).toBe("running");
  expect(Audio.made).toHaveLength(1);
});

test("after a tap that did not help no clock asks for one, until a tap helps", async () => {
  await does("pointerup", false);
  void sound.unlockSound();
  await vi.advanceTimersByTimeAsync(1_100);
  expect(states).toEqual(["failed", "failed"]);
  await does("click", true);
  Audio.made[0]?.becomes("interrupted");
  expect(states.at(-1)).toBe("waiting");
});

test("a tap that is stopped on its way starts the sound all the same", async () => {
  const silencing = (event: Event) => event.stopPropagation();
  window.addEventListener("pointerup", silencing, { capture: true });
  await taps();
  window.removeEventListener("pointerup", silencing, { capture: true });
  expect(states.at(-1)).toBe("running");
});

test("a sound that the system interrupts waits for the next tap", async () => {
  await taps();
  Audio.made[0]?.becomes("interrupted");
  expect(states.at(-1)).toBe("waiting");
  await taps();
  expect(states.at(-1)).toBe("running");
});

test("an audio context that cannot be resumed gives way to another", async () => {
  Audio.broken = true;
  await does("pointerup", true);
  expect(states.at(-1)).toBe("failed");
  Audio.broken = false;
  await does("pointerup", true);
  expect(states.at(-1)).toBe("running");
  expect(Audio.made).toHaveLength(2);
});

test("where no tap is wanted the sound starts by itself", async () => {
  Audio.granted = true;
  await sound.unlockSound();
  expect(states.at(-1)).toBe("running");
});

test("a browser without audio says that a tap does not help", async () => {
  vi.stubGlobal("AudioContext", undefined);
  await does("pointerup", true);
  expect(states.at(-1)).toBe("failed");
});

test("a ring that began without audio is heard as soon as the audio runs, and not all at once", async () => {
  void sound.unlockSound();
  sound.startSound("stir");
  await vi.advanceTimersByTimeAsync(10_000);
  expect(Audio.made.map((one) => one.tones)).toEqual([0]);
  await does("pointerup", true);
  const { FIGURES } = await import("./tones");
  const before = Audio.made[0]?.tones ?? 0;
  await vi.advanceTimersByTimeAsync(FIGURES.stir.every * 1000);
  expect(Audio.made[0]?.tones).toBe(before + FIGURES.stir.tones.length);
});

test("while the system holds the audio context a sound rings as media, and no longer once the context runs", async () => {
  const played: { muted: boolean; src: string }[] = [];
  const files: Blob[] = [];
  vi.spyOn(URL, "createObjectURL").mockImplementation((file) => `blob:${files.push(file as Blob)}`);
  vi.spyOn(HTMLMediaElement.prototype, "play").mockImplementation(function (this: HTMLMediaElement) {
    played.push({ muted: this.muted, src: this.src });
    return Promise.resolve();
  });
  const paused = vi.spyOn(HTMLMediaElement.prototype, "pause").mockImplementation(() => {});
  await taps();
  expect(played).toEqual([{ muted: true, src: "blob:1" }]);
  expect(paused).toHaveBeenCalledOnce();
  Audio.made[0]?.becomes("interrupted");
  const { FIGURES } = await import("./tones");
  sound.startSound("too_hot");
  await vi.advanceTimersByTimeAsync(FIGURES.too_hot.every * 2000 + 100);
  expect(played.slice(1).map((one) => [one.muted, one.src])).toEqual(Array.from({ length: 3 }, () => [false, "blob:2"]));
  await taps();
  const before = played.length;
  await vi.advanceTimersByTimeAsync(FIGURES.too_hot.every * 3000);
  expect(played).toHaveLength(before);
  sound.stopSound();
  expect(paused).toHaveBeenCalledTimes(2);
  await holdsTheTones(files[1]);
});

/** A WAV of one figure of the siren: eight bits, one channel, loud throughout, as it has no gap. */
async function holdsTheTones(file: Blob | undefined): Promise<void> {
  const { FIGURES } = await import("./tones");
  const bytes = new Uint8Array(await (file as Blob).arrayBuffer());
  const words = String.fromCharCode(...bytes.slice(0, 44));
  expect([words.slice(0, 4), words.slice(8, 16), words.slice(36, 40)]).toEqual(["RIFF", "WAVEfmt ", "data"]);
  const head = new DataView(bytes.buffer);
  const [format, rate, size] = [head.getUint32(20, true), head.getUint32(24, true), head.getUint32(40, true)];
  expect([format, head.getUint16(34, true), size, bytes.length]).toEqual([0x10001, 8, rate * FIGURES.too_hot.every, 44 + size]);
  const loud = bytes.slice(44).filter((one) => Math.abs(one - 128) > 30).length;
  expect(loud / size).toBeGreaterThan(0.6);
}
