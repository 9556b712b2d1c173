/** The phone's own clock (ms), uncorrected. */
export function phoneNow(): number {
  return Date.now();
}

/** Longest delay handed to setTimeout: long ones overflow, and a clock that is set meanwhile must be noticed. */
const LONGEST_MS = 30_000;

/** Calls `due` when `untilDue` says 0 or less. `untilDue` is asked again at every look, so instants may move;
 * null: nothing to wait for. */
export class Alarm {
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(
    private readonly untilDue: () => number | null,
    private readonly due: () => void,
  ) {}

  /** Looks again: after the instants changed, and when the page comes back to the front. */
  rearm(): void {
    clearTimeout(this.timer);
    const left = this.untilDue();
    if (left === null) return;
    if (left <= 0) this.due();
    else this.timer = setTimeout(() => this.rearm(), Math.min(left, LONGEST_MS));
  }
}

/** Calls back whenever the page comes (back) to the front, from another app or from the page cache. */
export function onReturn(back: () => void): void {
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "visible") back();
  });
  window.addEventListener("focus", back);
  window.addEventListener("pageshow", back);
}
