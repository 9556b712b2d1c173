import { signal } from "@preact/signals";
import { useState } from "preact/hooks";

import { batches, endSeries, plan, type SeriesMember, seriesBefore, withMeasured } from "../../state";
import { t } from "../../text";
import { useOpenBatch } from "./OpenBatch";
import { asNext, hasNext, nextRequest } from "./series";

/** After which batch the others were taken off last here: that can be taken back at once. */
const endedHere = signal<string | null>(null);

/** The batches that were planned together with another and are still to be begun, however long ago that was. */
export function NextBatches() {
  const all = [...new Map<string, SeriesMember>([...seriesBefore.value, ...batches.value]).values()];
  const waiting = all.filter((one) => hasNext(one, all));
  return (
    <>
      {waiting.map((one) => one.run?.series_ended ? one.batchId === endedHere.value && <EndedLast key={one.batchId} batch={one} /> : <NextBatch key={one.batchId} batch={one} />)}
    </>
  );
}

/** Begins the batch after one of several, or says that it is not made. */
function NextBatch({ batch }: { batch: SeriesMember }) {
  const [waiting, keep] = useOpenBatch();
  const [failed, setFailed] = useState(false);
  const { name, series } = batch.plan;
  const start = async () => {
    try {
      const next = nextRequest(batch);
      if (!next) return;
      const { name: of, request, parts } = next;
      const answer = await plan(of, request, { measured: (typed) => withMeasured(of, typed, parts) });
      await keep(answer && asNext(batch, answer));
    } catch (error) {
      console.error("no plan of the next batch:", batch.batchId, error);
      setFailed(true);
    }
  };
  const end = () => {
    endedHere.value = batch.batchId;
    void endSeries(batch.batchId, true);
  };
  return (
    <section class="card">
      <p>{t("desk.next_batch", { name, number: (series?.number ?? 0) + 1, of: series?.of ?? 0 })}</p>
      {failed && <p class="warning-line">{t("desk.engine_failed")}</p>}
      <button type="button" class="go go-quiet" aria-disabled={waiting} onClick={() => void start()}>
        {t("button.next_batch")}
      </button>
      <button type="button" class="throw-away" aria-label={`${t("button.end_series")}: ${name}`} onClick={end}>
        {t("button.end_series")}
      </button>
    </section>
  );
}

function EndedLast({ batch }: { batch: SeriesMember }) {
  return (
    <p class="card changed" role="status">
      <span>{t("desk.series_ended", { name: batch.plan.name })}</span>
      <button type="button" onClick={() => void endSeries(batch.batchId, false)}>
        {t("button.take_it_back")}
      </button>
    </p>
  );
}
