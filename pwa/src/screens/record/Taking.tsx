import { useState } from "preact/hooks";

import { type BatchRecord, saveRecord, saveTimeline } from "../../state";
import { t } from "../../text";
import { canTypeBack } from "../paper/TypeBack";

/** What may be taken along of a record: a printed page, a table, the whole of it. */
export function Taking({ record }: { record: BatchRecord }) {
  const [failed, setFailed] = useState(false);
  const at = `/batches/${record.summary.batch_id}`;
  const save = (work: Promise<void>) => void work.then(() => setFailed(false), () => setFailed(true));
  return (
    <section class="card no-print">
      <h2>{t("desk.take_along")}</h2>
      <a class="go" href={`${at}/paper`}>
        {t("button.record_page")}
      </a>
      <div class="buttons">
        <button type="button" onClick={() => save(saveTimeline(record))}>
          {t("button.timeline_csv")}
        </button>
        <button type="button" onClick={() => save(saveRecord(record))}>
          {t("button.record_json")}
        </button>
      </div>
      {canTypeBack(record) && (
        <>
          <a class="go go-quiet" href={`${at}/sheet`}>
            {t("button.sheet")}
          </a>
          <a class="go go-quiet" href={`${at}/type`}>
            {t("button.type_back")}
          </a>
        </>
      )}
      {failed && <p class="card-wrong card">{t("desk.engine_failed")}</p>}
    </section>
  );
}
