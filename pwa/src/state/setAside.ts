/** Events whose time was ahead of the server's: somebody lets them in or keeps them out. */
import type { BenchEvent } from "../documents";
import { phoneNow } from "../platform/clock";
import { type Store, uuid7 } from "../storage";
import { setAsideStream, streamOf } from "../streams";
import { offsetMs } from "./time";

interface Parts {
  store: Store;
  /** Folds streams again. */
  refresh: (streams: string[]) => void;
  /** Told of a stream in which something was written. */
  wrote: (stream: string) => void;
}

export class SetAside {
  constructor(private readonly parts: Parts) {}

  /** Folds again what an event belongs to that was set aside. */
  async refresh(eventId: string): Promise<void> {
    const found = await this.parts.store.events.get(eventId);
    if (found) this.parts.refresh([streamOf(found.event)]);
  }

  /** Lets an event count at the time when the server received it, or keeps it out for good. */
  async decide({ id, shop_id }: BenchEvent, isIn: boolean): Promise<void> {
    const { store, refresh, wrote } = this.parts;
    const at_ms = phoneNow();
    const receivedMs = (await store.events.get(id))?.receivedMs ?? at_ms + offsetMs.value;
    const stream = setAsideStream(id);
    const said = isIn ? { kind: "let_in", body: { at_ms: receivedMs } } : { kind: "kept_out", body: {} };
    await store.events.append({ id: uuid7(at_ms), shop_id, stream, at_ms, offset_ms: offsetMs.value, ...said });
    refresh([stream]);
    wrote(stream);
  }
}
