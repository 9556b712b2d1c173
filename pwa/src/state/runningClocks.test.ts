// @vitest-environment node
import { afterEach, beforeEach, expect, test, vi } from "vitest";

import type { Clock, SoundName } from "../documents";
import { type Acknowledged, ARM_MS, isArmed, RunningClocks, type Running } from "./runningClocks";

const T0 = 1_790_000_000_000;
let log: string[];
let remembered: Acknowledged[];

beforeEach(() => {
  vi.useFakeTimers({ now: T0 });
  log = [];
  remembered = [];
});
afterEach(() => vi.useRealTimers());

function book(acknowledged: Acknowledged[] = []): RunningClocks {
  return new RunningClocks(
    {
      clock: () => Date.now(),
      startSound: (name) => log.push(`${name} at ${Date.now() - T0}`),
      stopSound: () => log.push(`silent at ${Date.now() - T0}`),
      due: (_batchId, clock) => log.push(`due ${clock.name}`),
      remember: (all) => {
        remembered = all;
      },
      tell: (batchId, button) => log.push(`${batchId} ${button.kind}`),
    },
    acknowledged,
  );
}

function clock(name: string, dueIn: number, sound: SoundName = "stir", startedIn = -60_000): Clock {
  return { name, due_ms: T0 + dueIn, started_ms: T0 + startedIn, sound };
}

function running(clock: Clock, batchId = "a", held = false): Running {
  return { batchId, clock, held };
}

test("a clock rings on the instant it is due, and the engine is asked what now", () => {
  const one = book();
  one.setClocks([running(clock("stir", 60_000))]);
  vi.advanceTimersByTime(59_999);
  expect(one.rings.value).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(one.rings.value).toMatchObject([{ batchId: "a", lateMs: 0, clock: { name: "stir" } }]);
  expect(log).toEqual(["stir at 60000", "due stir"]);
});

test("it rings 20 s, pauses 10 s and rings again until somebody taps", () => {
  const one = book();
  one.setClocks([running(clock("touch", 0, "ready"))]);
  vi.advanceTimersByTime(35_000);
  expect(one.silence()).toBe(true);
  vi.advanceTimersByTime(120_000);
  expect(log).toEqual(["ready at 0", "due touch", "silent at 20000", "ready at 30000", "silent at 35000"]);
  expect(one.rings.value).toEqual([]);
});

test("too hot never pauses and drowns any other", () => {
  const one = book();
  one.setClocks([running(clock("too_hot", 0, "too_hot")), running(clock("touch", 5_000, "ready"), "b")]);
  vi.advanceTimersByTime(60_000);
  expect(log.filter((line) => line.startsWith("silent"))).toEqual([]);
  expect(log.filter((line) => line.startsWith("ready"))).toEqual([]);
  expect(one.rings.value.map((ring) => ring.clock.name)).toEqual(["too_hot", "touch"]);
});

test("a second clock that falls due in the pause is heard at once", () => {
  const one = book();
  one.setClocks([running(clock("touch", 0, "ready")), running(clock("stir", 25_000), "b")]);
  vi.advanceTimersByTime(25_000);
  expect(log.at(-2)).toBe("stir at 25000");
});

test("what was missed rings on return and says how late it is", () => {
  const one = book();
  one.setClocks([running(clock("touch", -7_200_000, "ready", -9_000_000))]);
  expect(one.rings.value[0]?.lateMs).toBe(7_200_000);
});

test("what was acknowledged does not ring again after a reload, what was not does", () => {
  const clocks = [running(clock("stir", 0)), running(clock("touch", 10, "ready"), "b")];
  const one = book();
  one.setClocks(clocks);
  one.silence();
  const again = book(remembered);
  again.setClocks(clocks);
  vi.advanceTimersByTime(10);
  expect(again.rings.value.map((ring) => ring.clock.name)).toEqual(["touch"]);
});

test("an acknowledged clock that is put off rings again at its new time, a hair's shift does not", () => {
  const one = book();
  one.setClocks([running(clock("touch", 0, "ready"))]);
  one.silence();
  one.setClocks([running(clock("touch", 20_000, "ready"))]);
  vi.advanceTimersByTime(30_000);
  expect(one.rings.value).toEqual([]);
  one.setClocks([running(clock("touch", 600_000, "ready"))]);
  vi.advanceTimersByTime(570_000);
  expect(one.rings.value).toHaveLength(1);
});

test("a fresh clock of the same name rings although the last one was acknowledged", () => {
  const one = book();
  one.setClocks([running(clock("stir", 0))]);
  one.silence();
  one.setClocks([running(clock("stir", 30_000, "stir", 1_000))]);
  vi.advanceTimersByTime(30_000);
  expect(one.rings.value).toHaveLength(1);
});

test("a clock that is gone or moved to later falls silent", () => {
  const one = book();
  one.setClocks([running(clock("stir", 0))]);
  one.setClocks([running(clock("stir", 90_000))]);
  expect(one.rings.value).toEqual([]);
  vi.advanceTimersByTime(90_000);
  expect(one.rings.value).toHaveLength(1);
  one.setClocks([]);
  expect(one.rings.value).toEqual([]);
  expect(log.at(-1)).toBe("silent at 90000");
});

test("a clock held back by a fresh tap waits for the fold", () => {
  const one = book();
  one.setClocks([running(clock("stir", 1_000), "a", true)]);
  vi.advanceTimersByTime(2_000);
  expect(one.rings.value).toEqual([]);
  one.setClocks([running(clock("stir", 1_000))]);
  expect(one.rings.value).toHaveLength(1);
});

test("the button arms 700 ms after the tap that silenced", () => {
  const one = book();
  expect(one.silence()).toBe(false);
  one.setClocks([running(clock("stir", 0))]);
  expect(one.silence()).toBe(true);
  expect(one.armedAt.value).toBe(T0 + ARM_MS);
  expect([0, ARM_MS - 1, ARM_MS, -3_600_000].map((ms) => isArmed(T0 + ms, one.armedAt.value))).toEqual([false, false, true, true]);
});

test("silencing in one tab silences the other", () => {
  const [one, two] = [book(), book()];
  for (const each of [one, two]) each.setClocks([running(clock("stir", 0))]);
  one.silence();
  two.takeAcknowledged(remembered);
  expect(two.rings.value).toEqual([]);
});

test("the tap that silences the salt clock says that they are salted", () => {
  const one = book();
  const salted = { code: "button.salted", kind: "salted", body: { seen: 0 } };
  one.setClocks([running({ ...clock("salt", 1_000, "ready"), tells: salted }), running(clock("stir", 60_000))]);
  one.silence();
  expect(log).toEqual([]);
  vi.advanceTimersByTime(1_000);
  one.silence();
  expect(log.at(-1)).toBe("a salted");
});

test("a clock two days ahead does not ring now", () => {
  const one = book();
  one.setClocks([running(clock("centres", 48 * 3_600_000, "ready"))]);
  vi.advanceTimersByTime(60_000);
  expect(one.rings.value).toEqual([]);
});

test("a clock that was acknowledged will not ring, one that was not will", () => {
  const one = book();
  expect(one.willRing.value).toBe(false);
  one.setClocks([running(clock("stir", 1_000))]);
  expect(one.willRing.value).toBe(true);
  vi.advanceTimersByTime(1_000);
  one.silence();
  expect(one.willRing.value).toBe(false);
  one.setClocks([running(clock("stir", 0)), running(clock("touch", 60_000))]);
  expect(one.willRing.value).toBe(true);
});
