import { Refusal, Unreachable } from "./api";
import { backoffMs } from "./backoff";
import type { ExchangeResult } from "./exchange";

/** Lets one tab at a time do something; false when another tab is at it. */
type Alone = (work: () => Promise<void>) => Promise<boolean>;

interface LoopParts {
  exchange: () => Promise<ExchangeResult>;
  alone: Alone;
  random: () => number;
  /** After each try: what it brought, or why it failed. */
  after: (result: ExchangeResult | null, error?: unknown) => Promise<void> | void;
}

/** Exchanges with the server again and again: at once when nudged, calmly while all is well, ever more rarely while
 * nobody answers. One exchange at a time. */
export class SyncLoop {
  private timer: ReturnType<typeof setTimeout> | undefined;
  private running: Promise<void> | null = null;
  private again = false;
  private failures = 0;

  constructor(private readonly parts: LoopParts) {}

  /** Exchanges now, or once more right after the exchange that is running; resolves when that is over. */
  nudge(): Promise<void> {
    if (this.running) {
      this.again = true;
      return this.running;
    }
    clearTimeout(this.timer);
    this.running = this.rounds().finally(() => {
      this.running = null;
      this.timer = setTimeout(() => void this.nudge(), backoffMs(this.failures, this.parts.random()));
    });
    return this.running;
  }

  /** An event was written: tell the server, unless it has just been silent and the back-off runs. */
  wrote(): void {
    if (this.failures === 0) void this.nudge();
  }

  stop(): void {
    clearTimeout(this.timer);
  }

  private async rounds(): Promise<void> {
    do {
      this.again = false;
      await this.parts.alone(() => this.round());
    } while (this.again && this.failures === 0);
  }

  private async round(): Promise<void> {
    try {
      const result = await this.parts.exchange();
      this.failures = 0;
      await this.parts.after(result, null);
    } catch (error) {
      if (!(error instanceof Unreachable || error instanceof Refusal)) console.error(error);
      this.failures += 1;
      await this.parts.after(null, error);
    }
  }
}
