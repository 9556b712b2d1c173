import { signal } from "@preact/signals";

import type { Shop, Summary } from "../documents";
import { correctedMs } from "../order";
import type { Store } from "../storage";
import { httpApi, NOT_PAIRED, Refusal, Unreachable } from "../sync/api";
import { Exchange, type ExchangeResult } from "../sync/exchange";
import { SyncLoop } from "../sync/loop";
import { OffsetFilter } from "../sync/offset";
import type { SyncState } from "./types";

/** What the server and this phone have of each other. */
export const sync = signal<SyncState>({ reachable: null, trouble: null, unsent: 0, unsentSince: null, unsentPhotos: 0, refused: [], setAside: [], anotherLogSince: null, certificateUntil: null, confirmed: false, lastAt: null, persistent: null, role: null });

interface SyncParts {
  store: Store;
  phoneNow: () => number;
  alone: (work: () => Promise<void>) => Promise<boolean>;
  offset: (ms: number) => void;
  shop: (shop: Shop) => void;
  summaries: (summaries: Summary[]) => void;
  /** The server answered, and has all facts of this phone; `anotherLog`: in another log than before. */
  exchanged: (engineVersion: string, anotherLog: boolean) => void;
  /** Streams with new events. */
  touched: (streams: string[]) => void;
}

/** Keeps the exchange with the server going and `sync` true. */
export class Syncing {
  readonly loop: SyncLoop;
  private readonly filter: OffsetFilter;

  constructor(
    private readonly parts: SyncParts,
    offsetMs: number | null,
  ) {
    this.filter = new OffsetFilter(offsetMs);
    const exchange = new Exchange(parts.store, httpApi, this.filter, parts.phoneNow);
    this.loop = new SyncLoop({
      exchange: () => exchange.run(),
      alone: parts.alone,
      random: Math.random,
      after: (result, error) => this.after(result, error),
    });
  }

  /** Counts again what is not on the server. */
  async count(): Promise<void> {
    const { events, photos, meta } = this.parts.store;
    const counts = [events.unsentCount(), photos.unsentCount(), events.refused(), events.setAside(), meta.get<number>("another_log_ms"), events.waiting(1), meta.get<number>("certificate_until_ms")] as const;
    const [unsent, unsentPhotos, refused, setAside, since, [oldest], until] = await Promise.all(counts);
    sync.value = { ...sync.value, unsent, unsentSince: oldest ? correctedMs(oldest) : null, unsentPhotos, refused, setAside, anotherLogSince: since ?? null, certificateUntil: until ?? null };
  }

  /** Somebody has read that the server's log is another one. */
  async readOfAnotherLog(): Promise<void> {
    await this.parts.store.meta.put("another_log_ms", null);
    await this.count();
  }

  private async after(result: ExchangeResult | null, error: unknown): Promise<void> {
    sync.value = { ...sync.value, trouble: error instanceof Unreachable ? error.told : null };
    if (this.filter.offsetMs !== null) this.parts.offset(this.filter.offsetMs);
    if (result) {
      this.takeResult(result);
      await this.parts.store.meta.put("certificate_until_ms", result.health.certificate_until_ms ?? null);
    } else sync.value = { ...sync.value, reachable: false, confirmed: false, role: roleAfter(error) };
    await this.count();
  }

  private takeResult({ health, anotherLog, shop, summaries, touched }: ExchangeResult): void {
    const lastAt = this.parts.phoneNow() + (this.filter.offsetMs ?? 0);
    sync.value = { ...sync.value, reachable: true, confirmed: true, lastAt, role: health.role ?? "owner" };
    if (shop) this.parts.shop(shop);
    if (summaries) this.parts.summaries(summaries);
    if (touched.size > 0) this.parts.touched([...touched]);
    this.parts.exchanged(health.engine_version, anotherLog);
  }
}

/** Whoever is not paired is told so by the server; a server that does not answer changes nothing. */
function roleAfter(error: unknown): SyncState["role"] {
  return error instanceof Refusal && error.status === NOT_PAIRED ? "none" : sync.value.role;
}
