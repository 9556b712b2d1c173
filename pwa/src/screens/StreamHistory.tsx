import { useEffect, useState } from "preact/hooks";

import type { BenchEvent, Values } from "../documents";
import { streamEvents } from "../state";
import { t } from "../text";
import { Timeline } from "../ui/Timeline";
import { happeningsOf } from "./record/happenings";

interface Props {
  of: "lot" | "order" | "pack";
  id: string;
  /** What the events add up to: they are read again when it changes. */
  document: unknown;
  /** What the words of an event need besides its body. */
  more?: (kind: string, body: Values) => Values;
}

/** What was written of a lot, an order or packed boxes, when and by whom, as far as this phone holds it. */
export function StreamHistory({ of, id, document, more = () => ({}) }: Props) {
  const [events, setEvents] = useState<BenchEvent[]>([]);
  useEffect(() => {
    streamEvents(of, id).then(setEvents).catch((error: unknown) => console.error("history:", error));
  }, [of, id, document]);
  if (events.length === 0) return null;
  return (
    <details class="card no-print">
      <summary>{t("desk.timeline")}</summary>
      <Timeline happenings={happeningsOf(events, []).map((one) => ({ ...one, words: t(`stream.${one.kind}`, { ...one.body, ...more(one.kind, one.body) }) }))} />
    </details>
  );
}
