import { correctedMs, isOfKind } from "../../order";
import type { BatchRecord } from "../../state";
import type { Happening } from "../../ui/Timeline";

/** The log in its order, with what was taken back and what did not fit marked; `undone` itself is not a line. */
export function happenings({ events, run }: BatchRecord): Happening[] {
  const undone = new Set(events.filter(isOfKind("undone")).map((one) => one.body.event_id));
  const ignored = new Set(run.ignored.map((one) => one.id));
  return events
    .filter((one) => one.kind !== "undone" && one.kind !== "cooling_refitted")
    .map((one) => ({
      id: one.id,
      at_ms: correctedMs(one),
      kind: one.kind,
      body: one.body,
      undone: undone.has(one.id),
      ignored: ignored.has(one.id),
    }));
}
