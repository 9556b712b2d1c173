import type { BenchEvent } from "../documents";
import { correctedMs } from "../order";
import { formatDate, t } from "../text";
import { happeningWords } from "../ui/Timeline";
import { Card } from "../ui/Card";

/** So many of them are named; the rest is counted. */
const NAMED = 12;

/** The facts that are kept and count nowhere, because their time lies more than a day ahead; nothing where there are none. */
export function SetAside({ events }: { events: BenchEvent[] }) {
  if (events.length === 0) return null;
  return (
    <Card title={t("desk.set_aside_title")}>
      <p class="warning-line">{t("desk.set_aside", { n: events.length })}</p>
      <ul class="plain">
        {events.slice(0, NAMED).map((one) => (
          <li key={one.id}>
            {formatDate(correctedMs(one))}: {happeningWords(one)}
          </li>
        ))}
      </ul>
    </Card>
  );
}
