import { type BatchRecord, saveRecord, saveTimeline } from "../../state";
import { t } from "../../text";
import { SaveButtons } from "../../ui/SaveButtons";
import { canTypeBack } from "../paper/TypeBack";

/** What may be taken along of a record: a printed page, a table, the whole of it. */
export function TakeAlong({ record }: { record: BatchRecord }) {
  const at = `/batches/${record.summary.batch_id}`;
  return (
    <section class="card no-print">
      <h2>{t("desk.take_along")}</h2>
      <a class="go" href={`${at}/paper`}>
        {t("button.record_page")}
      </a>
      <SaveButtons files={{ "button.timeline_csv": () => saveTimeline(record), "button.record_json": () => saveRecord(record) }} />
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
    </section>
  );
}
