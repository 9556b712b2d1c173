import type { BenchEvent } from "../../documents";
import { correctedMs, takenBack } from "../../order";
import { type BatchRecord, shop } from "../../state";
import { t } from "../../text";
import type { Happening } from "../../ui/Timeline";

const NO_LINES = ["undone", "redone", "cooling_refitted"];

/** The log in its order, with what was taken back and what did not fit marked; that it was taken back is no line. */
export function happenings({ events, run }: BatchRecord): Happening[] {
  return happeningsOf(events, run.ignored);
}

/** The same of any stream. */
export function happeningsOf(events: BenchEvent[], left_out: { id: string | null }[]): Happening[] {
  const undone = takenBack(events);
  const ignored = new Set(left_out.map((one) => one.id));
  return events
    .filter((one) => !NO_LINES.includes(one.kind))
    .map((one) => ({
      id: one.id,
      at_ms: correctedMs(one),
      kind: one.kind,
      body: one.body,
      by: nameOf(one.body["by"]),
      undone: undone.has(one.id),
      ignored: ignored.has(one.id),
    }));
}

/** Who was at the phone; null: nobody in particular. */
function nameOf(by: unknown): string | null {
  if (typeof by !== "string") return null;
  return shop.value?.people.find((row) => row.id === by)?.name || t("people.gone");
}
