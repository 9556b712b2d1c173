import { EngineFailure } from "../problems";
import type { Answer, Call } from "./messages";

interface Waiting {
  name: string;
  text: string;
  /** A later call with the same key overtakes this one as long as it is not being computed. */
  key: string | null;
  done: (text: string | null) => void;
  failed: (error: EngineFailure) => void;
}

/** What a queue needs of a Worker. */
export interface EnginePort {
  postMessage(call: Call): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<Answer>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

/** Told when an engine has started, and when one stopped. */
export interface QueueListener {
  ready?: (version: string) => void;
  crashed?: (why: string) => void;
}

/** A worker that crashes again and again is not started more often than this. */
const MOST_RESTARTS = 5;

/** One engine worker and the calls that wait for it: one at a time, in order, restarted when it crashes. */
export class WorkerQueue {
  private port: EnginePort | null = null;
  private waiting: Waiting[] = [];
  private current: Waiting | null = null;
  private lastId = 0;
  private restarts = 0;

  constructor(
    private readonly make: () => EnginePort,
    private readonly listener: QueueListener = {},
  ) {}

  /** The answer as JSON text; null when a later call with the same key overtook this one. */
  call(name: string, text: string, key: string | null = null): Promise<string | null> {
    return new Promise((done, failed) => {
      if (key !== null) this.overtake(key);
      this.waiting.push({ name, text, key, done, failed });
      this.next();
    });
  }

  /** Starts the worker before its first call. */
  warm(): void {
    this.port ??= this.started();
  }

  private overtake(key: string): void {
    const older = this.waiting.filter((one) => one.key === key);
    this.waiting = this.waiting.filter((one) => one.key !== key);
    for (const one of older) one.done(null);
  }

  private started(): EnginePort {
    const port = this.make();
    port.onmessage = ({ data }) => this.answered(data);
    port.onerror = (event) => this.crashed(event.message || "the engine's worker stopped");
    return port;
  }

  private next(): void {
    if (this.current || this.waiting.length === 0) return;
    this.warm();
    this.current = this.waiting.shift() ?? null;
    if (this.current) this.port?.postMessage({ id: ++this.lastId, name: this.current.name, text: this.current.text });
  }

  private answered(answer: Answer): void {
    if ("ready" in answer) return this.listener.ready?.(answer.ready);
    if ("unready" in answer) return this.crashed(answer.unready);
    if (answer.id !== this.lastId || !this.current) return;
    const { done, failed } = this.current;
    this.current = null;
    if ("fault" in answer) failed(new EngineFailure(answer.fault.trace, answer.fault));
    else {
      this.restarts = 0;
      done(answer.text);
    }
    this.next();
  }

  /** The call at hand fails; those behind it go to a fresh worker, as long as starting one makes sense. */
  private crashed(why: string): void {
    this.listener.crashed?.(why);
    this.port?.terminate();
    this.port = null;
    const lost = this.current ? [this.current] : [];
    this.current = null;
    if (++this.restarts > MOST_RESTARTS) lost.push(...this.waiting.splice(0));
    for (const one of lost) one.failed(new EngineFailure(why));
    this.next();
  }
}
