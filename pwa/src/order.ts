import type { BenchEvent, EventKind, EventOf } from "./documents";

/** When an event happened by the server's clock (ms). */
export function correctedMs(event: BenchEvent): number {
  return event.at_ms + event.offset_ms;
}

/** An event corrected to later than this from when the server received it is set aside: no fold takes it. */
export const AHEAD_MS = 86_400_000;

/** Whether an event is set aside, as the server says it too (services/clock.py). `receivedMs`: by the server's clock. */
export function isAhead(event: BenchEvent, receivedMs: number): boolean {
  return correctedMs(event) > receivedMs + AHEAD_MS;
}

/** The total order of events: corrected time, device, the device's own count. */
export function inOrder(a: BenchEvent, b: BenchEvent): number {
  const byTime = correctedMs(a) - correctedMs(b);
  if (byTime !== 0) return byTime;
  if (a.device_id !== b.device_id) return a.device_id < b.device_id ? -1 : 1;
  return a.seq - b.seq;
}

/** The ids of events that count as not there, of events in their order: what was said of each last (engine: batch/log.py). */
export function takenBack(events: BenchEvent[]): Set<string> {
  const found = new Set<string>();
  for (const event of events) {
    if (isOfKind("undone")(event)) found.add(event.body.event_id);
    if (isOfKind("redone")(event)) found.delete(event.body.event_id);
  }
  return found;
}

/** The last event of a kind that was not taken back. */
export function lastThatCounts(events: BenchEvent[], kind: EventKind): BenchEvent | undefined {
  const back = takenBack(events);
  return events.filter((one) => one.kind === kind && !back.has(one.id)).at(-1);
}

/** Tells events of one kind; their bodies are then as the engine describes them. */
export function isOfKind<K extends EventKind>(kind: K) {
  return (event: BenchEvent): event is EventOf<K> => event.kind === kind;
}
