import { signal } from "@preact/signals";

import type { Clock, EventButton, SoundName } from "../documents";
import { Alarm } from "../platform/clock";
import type { Ring } from "./types";

/** A running clock of a batch. `held`: something was just written that may have stopped it; wait for the fold. */
export interface Running {
  batchId: string;
  clock: Clock;
  held: boolean;
}

/** A clock somebody has acknowledged, as due at `due_ms`: moved to a later instant it rings again. */
export interface Acknowledged {
  batchId: string;
  name: string;
  started_ms: number;
  due_ms: number;
}

interface RingParts {
  /** Corrected time (ms). */
  clock: () => number;
  startSound: (name: SoundName) => void;
  stopSound: () => void;
  /** A clock is due: ask the engine what now. */
  due: (batchId: string, clock: Clock) => void;
  remember: (acknowledged: Acknowledged[]) => void;
  /** The tap that silenced a clock is a button of its batch as well. */
  tell: (batchId: string, button: EventButton) => void;
}

/** It rings so long, pauses so long, and rings again (ms). */
const RING_MS = 20_000;
const PAUSE_MS = 10_000;
/** After the tap that silenced, the button counts only so much later (ms). */
export const ARM_MS = 700;
/** Whether a tap at `at` counts. Never dead for longer than ARM_MS, though the clock is set back meanwhile. */
export function isArmed(at: number, armedAt: number): boolean {
  return at >= armedAt || armedAt - at > ARM_MS;
}
/** A clock that a refit moves by less than this after it was acknowledged does not ring again (ms). */
const SAME_MS = 60_000;
const MOST_REMEMBERED = 60;

/** Rings every due clock until somebody taps; knows no sound, no storage and no engine itself. */
export class RunningClocks {
  private running: Running[] = [];
  private phase: ReturnType<typeof setTimeout> | undefined;
  private readonly alarm: Alarm;

  constructor(
    private readonly parts: RingParts,
    private acknowledged: Acknowledged[] = [],
    readonly rings = signal<Ring[]>([]),
    readonly armedAt = signal(0),
    readonly willRing = signal(false),
  ) {
    this.alarm = new Alarm(
      () => this.untilNext(),
      () => this.ringDue(),
    );
  }

  /** The clocks that run now; those that ring and are gone, or were moved to later, fall silent. */
  setClocks(running: Running[]): void {
    this.running = running;
    const now = this.parts.clock();
    const left = this.rings.value.flatMap((ring) => {
      const still = running.find((one) => sameClock(one, ring));
      return still && still.clock.due_ms <= now ? [{ ...ring, clock: still.clock }] : [];
    });
    if (left.length !== this.rings.value.length) this.show(left);
    this.count();
    this.alarm.rearm();
  }

  /** What another tab acknowledged counts here too. */
  takeAcknowledged(acknowledged: Acknowledged[]): void {
    this.acknowledged = acknowledged;
    this.show(this.rings.value.filter((ring) => !this.isAcknowledged(ring)));
    this.count();
    this.alarm.rearm();
  }

  /** Looks at the time again: the page came back, or the clock's error was estimated anew. */
  rearm(): void {
    this.alarm.rearm();
  }

  /** Stops the ringing, tells what the tap means and remembers what was acknowledged; false when nothing rang. */
  silence(): boolean {
    const ringing = this.rings.value;
    if (ringing.length === 0) return false;
    this.acknowledged = [...this.acknowledged, ...ringing.map(acknowledgement)].slice(-MOST_REMEMBERED);
    this.parts.remember(this.acknowledged);
    this.armedAt.value = this.parts.clock() + ARM_MS;
    this.show([]);
    this.count();
    for (const { batchId, clock } of ringing) if (clock.tells) this.parts.tell(batchId, clock.tells);
    return true;
  }

  private count(): void {
    this.willRing.value = this.running.some((one) => !this.isAcknowledged(one));
  }

  private untilNext(): number | null {
    const open = this.running.filter((one) => this.isSilent(one));
    if (open.length === 0) return null;
    return Math.min(...open.map((one) => one.clock.due_ms)) - this.parts.clock();
  }

  private ringDue(): void {
    const now = this.parts.clock();
    const due = this.running.filter((one) => this.isSilent(one) && one.clock.due_ms <= now);
    const added = due.map(({ batchId, clock }) => ({ batchId, clock, lateMs: now - clock.due_ms }));
    // Left for whoever measures how punctual we are.
    for (const { clock, lateMs } of added) performance.mark(`ring:${clock.name}`, { detail: { lateMs } });
    this.show([...this.rings.value, ...added].sort((a, b) => a.clock.due_ms - b.clock.due_ms));
    for (const { batchId, clock } of added) this.parts.due(batchId, clock);
    this.alarm.rearm();
  }

  /** Running, not held back, not acknowledged and not ringing already. */
  private isSilent(one: Running): boolean {
    return !one.held && !this.isAcknowledged(one) && !this.rings.value.some((ring) => sameClock(ring, one));
  }

  private isAcknowledged({ batchId, clock }: { batchId: string; clock: Clock }): boolean {
    return this.acknowledged.some(
      (one) =>
        one.batchId === batchId &&
        one.name === clock.name &&
        one.started_ms === clock.started_ms &&
        clock.due_ms < one.due_ms + SAME_MS,
    );
  }

  /** Draws and sounds what rings now, from the start of a ring. */
  private show(rings: Ring[]): void {
    clearTimeout(this.phase);
    const [first] = rings;
    this.rings.value = rings;
    if (!first) return this.parts.stopSound();
    const tooHot = rings.some((ring) => ring.clock.sound === "too_hot");
    this.parts.startSound(tooHot ? "too_hot" : (rings.at(-1) ?? first).clock.sound);
    if (!tooHot) this.phase = setTimeout(() => this.rest(), RING_MS);
  }

  private rest(): void {
    this.parts.stopSound();
    this.phase = setTimeout(() => this.show(this.rings.value), PAUSE_MS);
  }
}

function sameClock(a: { batchId: string; clock: Clock }, b: { batchId: string; clock: Clock }): boolean {
  return a.batchId === b.batchId && a.clock.name === b.clock.name && a.clock.started_ms === b.clock.started_ms;
}

function acknowledgement({ batchId, clock }: Ring): Acknowledged {
  return { batchId, name: clock.name, started_ms: clock.started_ms, due_ms: clock.due_ms };
}
