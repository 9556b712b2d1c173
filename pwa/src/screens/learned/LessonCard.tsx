import { useState } from "preact/hooks";

import type { Lesson } from "../../documents";
import { leaveOut } from "../../state";
import { format, formatDay, t } from "../../text";
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
      {contribution ? <Happened compared={contribution.compared} /> : <p>{t("learned.unreadable")}</p>}
      {contribution && contribution.unused.length > 0 && (
        <p class="quiet">{t("learned.silent", { parts: contribution.unused.map((one) => t(`learned.part.${one.part}`)).join(", ") })}</p>
      )}
      {reason === null ? (
        contribution && <LeavingOut batchId={batch_id} />
      ) : (
        <>
          <p class="minding">{t("learned.left_out", { reason })}</p>
          <button type="button" class="go go-quiet" onClick={() => void leaveOut(batch_id, null)}>
            {t("button.take_in")}
          </button>
        </>
      )}
    </article>
  );
}

type Compared = NonNullable<Lesson["contribution"]>["compared"];

function Happened({ compared }: { compared: Compared }) {
  return (
    <table class="compared">
      <thead>
        <tr>
          <td />
          <th scope="col">{t("desk.planned")}</th>
          <th scope="col">{t("desk.happened")}</th>
        </tr>
      </thead>
      <tbody>
        {compared.map((row) => (
          <tr key={row.name}>
            <th scope="row">{t(`learned.row.${row.name}`)}</th>
            <td>
              {format(row.name, row.planned)}
              {row.low !== null && row.high !== null && (
                <small>{t("learned.between", { low: format(row.name, row.low), high: format(row.name, row.high) })}</small>
              )}
            </td>
            <td>{format(row.name, row.happened)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
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
