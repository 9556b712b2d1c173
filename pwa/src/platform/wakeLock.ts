import { onEveryTap } from "./userActivation";

/** Whether the screen stays on: asked for and held, refused by the phone, or not to be had here. */
export type WakeState = "idle" | "held" | "refused" | "missing";

/** Keeps the screen on while wanted; asks again whenever the phone took the lock away. */
export class WakeLock {
  private wanted = false;
  private asking = false;
  private sentinel: WakeLockSentinel | null = null;

  constructor(private readonly report: (state: WakeState) => void) {
    document.addEventListener("visibilitychange", () => void this.ask());
    // Some phones grant it only from a tap.
    onEveryTap(() => void this.ask());
  }

  want(wanted: boolean): void {
    if (wanted === this.wanted) return;
    this.wanted = wanted;
    if (wanted) void this.ask();
    else {
      void this.sentinel?.release().catch(() => {});
      this.sentinel = null;
      this.report("idle");
    }
  }

  private async ask(): Promise<void> {
    if (!this.wanted || this.asking || this.sentinel || document.visibilityState !== "visible") return;
    const { wakeLock } = navigator as { wakeLock?: WakeLockApi };
    if (!wakeLock) return this.report("missing");
    this.asking = true;
    try {
      const sentinel = await wakeLock.request("screen");
      if (!this.wanted) return void sentinel.release();
      this.sentinel = sentinel;
      sentinel.addEventListener("release", () => this.lost(sentinel));
      this.report("held");
    } catch {
      this.report("refused");
    } finally {
      this.asking = false;
    }
  }

  private lost(sentinel: WakeLockSentinel): void {
    if (this.sentinel !== sentinel) return;
    this.sentinel = null;
    if (this.wanted) this.report("refused");
    void this.ask();
  }
}

type WakeLockApi = Navigator["wakeLock"];
