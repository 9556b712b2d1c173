import type { BenchEvent } from "../documents";
import { correctedMs } from "../order";
import { formatDate, t } from "../text";
import { happeningWords } from "../ui/Timeline";
import { Card } from "../ui/Card";

/** So many of them are named; the rest is counted. */
const NAMED = 12;

interface Props {
  events: BenchEvent[];
  /** Lets one count, or keeps it out; without it nothing is asked. */
  decide?: (event: BenchEvent, isIn: boolean) => Promise<void>;
}

/** The facts that are kept and count nowhere, because their time lies more than a day ahead; nothing where there are none. */
export function SetAside({ events, decide }: Props) {
  if (events.length === 0) return null;
  return (
    <Card title={t("desk.set_aside_title")}>
      <p class="warning-line">{t("desk.set_aside", { n: events.length })}</p>
      <ul class="plain">
        {events.slice(0, NAMED).map((one) => (
          <li key={one.id}>
            {formatDate(correctedMs(one))}: {happeningWords(one)}
            {decide && (
              <div>
                <button type="button" class="go go-quiet" onClick={() => void decide(one, true)}>
                  {t("button.let_it_count")}
                </button>
                <button type="button" class="go go-quiet" onClick={() => void decide(one, false)}>
                  {t("button.leave_out")}
                </button>
              </div>
            )}
          </li>
        ))}
      </ul>
    </Card>
  );
}
