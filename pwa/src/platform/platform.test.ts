import { afterEach, beforeEach, expect, test, vi } from "vitest";

import { inOneTab } from "./tabs";
import { keepStorage } from "./persistence";
import { FIGURES, VIBRATIONS } from "./tones";
import { WakeLock, type WakeState } from "./wakeLock";

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test("every sound stays where a phone's loudspeaker is loud", () => {
  for (const { tones } of Object.values(FIGURES))
    for (const { hz } of tones) {
      expect(hz).toBeGreaterThanOrEqual(500);
      expect(hz).toBeLessThanOrEqual(3000);
    }
});

test("the four sounds differ within their first half second in rhythm or direction", () => {
  const shape = (name: keyof typeof FIGURES) => {
    const early = FIGURES[name].tones.filter((tone) => tone.at < 0.5);
    const steps = early.slice(1).map((tone, index) => Math.sign(tone.hz - (early[index]?.hz ?? 0)));
    const pulse = early.length > 1 ? Math.round(((early[1]?.at ?? 0) - (early[0]?.at ?? 0)) * 20) : 0;
    return JSON.stringify([early.length, pulse, steps]);
  };
  const names = Object.keys(FIGURES) as (keyof typeof FIGURES)[];
  expect(new Set(names.map(shape)).size).toBe(4);
  expect(new Set(names.map((name) => JSON.stringify(VIBRATIONS[name]))).size).toBe(4);
});

test("a sound is over before it is played again", () => {
  for (const { tones, every } of Object.values(FIGURES))
    for (const { at, length } of tones) expect(at + length).toBeLessThanOrEqual(every + 1e-9);
});

/** A wake lock that is granted or refused as the test says, and can be taken away. */
class Sentinel extends EventTarget {
  release = () => {
    this.dispatchEvent(new Event("release"));
    return Promise.resolve();
  };
}

let states: WakeState[];
let granted: Sentinel[];
let refuse: boolean;

beforeEach(() => {
  states = [];
  granted = [];
  refuse = false;
});

function lock(): WakeLock {
  const request = () => {
    if (refuse) return Promise.reject(new DOMException("no", "NotAllowedError"));
    granted.push(new Sentinel());
    return Promise.resolve(granted.at(-1));
  };
  vi.stubGlobal("navigator", { wakeLock: { request } });
  return new WakeLock((state) => states.push(state));
}

const settled = () => new Promise((done) => setTimeout(done));

test("the screen is kept on while wanted and let go after", async () => {
  const one = lock();
  one.want(true);
  await settled();
  one.want(false);
  await settled();
  expect(states).toEqual(["held", "idle"]);
});

test("a lock that was taken away is asked for again at once", async () => {
  const one = lock();
  one.want(true);
  await settled();
  granted[0]!.dispatchEvent(new Event("release"));
  await settled();
  expect(granted).toHaveLength(2);
  expect(states.at(-1)).toBe("held");
});

test("a refusal is told, and asked again on return and on the next tap", async () => {
  const one = lock();
  refuse = true;
  one.want(true);
  await settled();
  expect(states).toEqual(["refused"]);
  refuse = false;
  window.dispatchEvent(new Event("pointerup"));
  await settled();
  expect(states).toEqual(["refused", "held"]);
});

test.each(["pointerup", "click"])("a %s that goes no further than the ring asks for the lock again", async (kind) => {
  const one = lock();
  refuse = true;
  one.want(true);
  await settled();
  refuse = false;
  const silencing = (event: Event) => event.stopPropagation();
  window.addEventListener(kind, silencing, { capture: true });
  document.body.dispatchEvent(new Event(kind, { bubbles: true }));
  window.removeEventListener(kind, silencing, { capture: true });
  await settled();
  expect(states).toEqual(["refused", "held"]);
});

test("a phone without wake lock, storage manager or locks still works, and says so", async () => {
  vi.stubGlobal("navigator", {});
  const one = new WakeLock((state) => states.push(state));
  one.want(true);
  expect(states).toEqual(["missing"]);
  expect(await keepStorage()).toBeNull();
  let ran = false;
  expect(
    await inOneTab("x", async () => {
      ran = true;
    }),
  ).toBe(true);
  expect(ran).toBe(true);
});

test("only one tab sends", async () => {
  const request = (_name: string, _options: unknown, work: (lock: null) => unknown) => Promise.resolve(work(null));
  vi.stubGlobal("navigator", { locks: { request } });
  expect(await inOneTab("x", () => Promise.reject(new Error("must not run")))).toBe(false);
});
