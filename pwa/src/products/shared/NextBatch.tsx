import { useState } from "preact/hooks";

import { type Batch, batches, plan, withMeasured } from "../../state";
import { t } from "../../text";
import { useOpenBatch } from "./OpenBatch";
import { asNext, hasNext, nextRequest } from "./series";

/** The batches that were planned together with another and are still to be begun. */
export function NextBatches() {
  const all = [...batches.value.values()];
  return (
    <>
      {all.filter((one) => hasNext(one, all)).map((batch) => (
        <NextBatch key={batch.batchId} batch={batch} />
      ))}
    </>
  );
}

/** Begins the batch after one of several. */
function NextBatch({ batch }: { batch: Batch }) {
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
  return (
    <section class="card">
      <p>{t("desk.next_batch", { name, number: (series?.number ?? 0) + 1, of: series?.of ?? 0 })}</p>
      {failed && <p class="warning-line">{t("desk.engine_failed")}</p>}
      <button type="button" class="go go-quiet" aria-disabled={waiting} onClick={() => void start()}>
        {t("button.next_batch")}
      </button>
    </section>
  );
}
