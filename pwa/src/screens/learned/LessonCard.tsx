import { useState } from "preact/hooks";

import type { Lesson } from "../../documents";
import { leaveOut } from "../../state";
import { format, formatDay, t } from "../../text";
import { type ComparedRow, ComparedTable } from "../../ui/ComparedTable";
import { WordsField } from "../../ui/fields";

/** One closed batch, planned against happened, with the way to leave it out or take it in again. */
export function LessonCard({ lesson }: { lesson: Lesson }) {
  const { batch_id, name, closed_at_ms, reason, contribution } = lesson;
  return (
    <article class={`card lesson${reason === null ? "" : " lesson-out"}`}>
      <h3>
        <a href={`/batches/${batch_id}`}>{name}</a>
      </h3>
      <p class="quiet">{formatDay(closed_at_ms)}</p>
      {contribution ? contribution.compared.length > 0 && <ComparedTable rows={contribution.compared.map(compared)} /> : <p>{t("learned.unreadable")}</p>}
      {contribution && contribution.unused.length > 0 && (
        <p class="quiet">{t("learned.silent", { parts: contribution.unused.map((one) => t(`learned.part.${one.part}`)).join(", ") })}</p>
      )}
      {reason === null ? (
        contribution && <LeavingOut batchId={batch_id} />
      ) : (
        <>
          <p class="warning-line">{t("learned.left_out", { reason })}</p>
          <button type="button" class="go go-quiet" onClick={() => void leaveOut(batch_id, null)}>
            {t("button.take_in")}
          </button>
        </>
      )}
    </article>
  );
}

type Compared = NonNullable<Lesson["contribution"]>["compared"][number];

function compared({ name, planned, low, high, happened }: Compared): ComparedRow {
  return {
    what: t(`learned.row.${name}`),
    planned: format(name, planned),
    between: low === null || high === null ? "" : t("learned.between", { low: format(name, low), high: format(name, high) }),
    happened: format(name, happened),
  };
}

const REASONS = ["readings", "mishap", "unusual"];

/** Never without a reason: one of the usual ones, or one's own words. */
function LeavingOut({ batchId }: { batchId: string }) {
  const [own, setOwn] = useState("");
  const leave = (reason: string) => void leaveOut(batchId, reason);
  return (
    <details class="leaving-out">
      <summary>{t("button.leave_out")}</summary>
      <p>{t("learned.why")}</p>
      {REASONS.map((one) => (
        <button key={one} type="button" class="go go-quiet" onClick={() => leave(t(`learned.reason.${one}`))}>
          {t(`learned.reason.${one}`)}
        </button>
      ))}
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (own.trim()) leave(own.trim());
        }}
      >
        <WordsField label={t("learned.own_reason")} value={own} most={200} onValue={setOwn} />
        <button type="submit" class="go go-quiet" aria-disabled={!own.trim()}>
          {t("button.leave_out")}
        </button>
      </form>
    </details>
  );
}
