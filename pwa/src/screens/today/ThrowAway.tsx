import { signal } from "@preact/signals";
import { useState } from "preact/hooks";

import type { EventButton } from "../../documents";
import { type Batch, batches, record, takeBackThrownAway } from "../../state";
import { t } from "../../text";
import { Reasons, type Why } from "../Reasons";

/** The batch that was thrown away last here: it can be taken back at once, and from its record at any time. */
const last = signal<string | null>(null);

/** Throws a batch away for a reason; one that was never begun, a sheet nobody used, is called back. */
export function ThrowAway({ batch, action }: { batch: Batch; action: EventButton }) {
  const [asked, setAsked] = useState(false);
  const reasons = action.reasons ?? [];
  const [only, ...more] = reasons;
  const tell = async (why: Why) => {
    setAsked(false);
    if ((await record(batch.batchId, action.kind, { ...action.body, ...why })) === "written") last.value = batch.batchId;
  };
  if (asked)
    return (
      <div class="card" role="group" aria-label={`${batch.plan.name}: ${t("screen.why")}`}>
        <p>{t("screen.why")}</p>
        <Reasons reasons={reasons} look="go go-quiet" onTell={(why) => void tell(why)} />
        <button type="button" class="go go-quiet" onClick={() => setAsked(false)}>
          {t("button.back")}
        </button>
      </div>
    );
  const alone = only !== undefined && more.length === 0;
  return (
    <button type="button" class="throw-away" aria-label={`${t(alone ? "button.call_back" : action.code)}: ${batch.plan.name}`} onClick={() => (alone ? void tell({ reason: only, text: "" }) : setAsked(true))}>
      {t(alone ? "button.call_back" : action.code)}
    </button>
  );
}

/** Says what was thrown away here, and takes it back. */
export function ThrownLast() {
  const batch = last.value === null ? undefined : batches.value.get(last.value);
  if (!batch?.run?.thrown_away) return null;
  return (
    <p class="card changed" role="status">
      <span>{t(batch.run.thrown_away.reason === "unused" ? "desk.called_back" : "desk.thrown_last", { name: batch.plan.name })}</span>
      <button type="button" onClick={() => void takeBackThrownAway(batch.batchId, batch.events)}>
        {t("button.take_it_back")}
      </button>
    </p>
  );
}
