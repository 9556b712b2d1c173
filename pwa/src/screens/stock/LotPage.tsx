import { useState } from "preact/hooks";

import type { Lot, LotLeft, ProblemDocument, Values, Warning } from "../../documents";
import { EngineProblem } from "../../problems";
import { checkLot, lots, summaries, takeLotPhoto, undoLastFact, writeFact } from "../../state";
import { formatDay, formatDayOf, formatMoney, problemText, t } from "../../text";
import { ChoiceField, QuantityField } from "../../ui/fields";
import { PhotoView } from "../../ui/PhotoView";
import { TakePhoto } from "../../ui/TakePhoto";
import { usePhoto } from "../record/usePhoto";
import { StreamHistory } from "../StreamHistory";
import { amountWords, lotTitle } from "./stockWords";

const WHY = ["spoilt", "past_best_by", "damaged", "dropped", "recalled", "other"];

/** One lot: what is left of it, and what one may say of it. */
export function LotPage({ lot, row }: { lot: Lot; row: LotLeft | undefined }) {
  const [doing, setDoing] = useState<"count" | "discard" | "merge" | null>(null);
  const alike = [...lots.value.values()].filter((one) => one.id !== lot.id && one.material === lot.material && one.merged_into === null);
  return (
    <div class="pane-one">
      <section class="card">
        {row && <p class="answer">{t("stock.left", { left: amountWords(row.left, row.unit) })}</p>}
        {lot.received_ms !== null && <p>{t(lot.supplier ? "stock.came_from" : lot.made_from ? "stock.was_kept" : "stock.came", { amount: amountWords(lot.amount, lot.unit), when: formatDay(lot.received_ms), supplier: lot.supplier })}</p>}
        {lot.made_from && <p><a href={`/batches/${lot.made_from}`}>{t("stock.of_batch", { name: summaries.value.find((one) => one.batch_id === lot.made_from)?.name ?? t("pack.a_batch") })}</a></p>}
        {lot.best_by && <p>{t("stock.best_by", { day: formatDayOf(lot.best_by) })}</p>}
        {lot.price_minor !== null && <p>{t("stock.paid", { price: formatMoney(lot.price_minor, lot.currency) })}</p>}
        {lot.opened_ms !== null && <p class="quiet">{t("stock.opened", { when: formatDay(lot.opened_ms) })}</p>}
        {lot.merged_into !== null && <p class="warning-line">{t("stock.merged")}</p>}
      </section>
      {row?.differences.map((one) => (
        <p class="card card-wrong" role="alert" key={one}>
          {t(`stock.differs_${one}`)}
        </p>
      ))}
      {doing === "count" && <Amount lot={lot} kind="left_counted" field="left" label={t("stock.count_label")} button={t("stock.count_keep")} onDone={() => setDoing(null)} />}
      {doing === "discard" && <Amount lot={lot} kind="discarded" field="amount" label={t("stock.discard_label")} button={t("stock.discard_keep")} onDone={() => setDoing(null)} />}
      {doing === "merge" && <Merge lot={lot} alike={alike} onDone={() => setDoing(null)} />}
      {doing === null && (
        <>
          {lot.opened_ms === null && (
            <button type="button" class="go" onClick={() => void writeFact("lot", lot.id, "opened", {})}>
              {t("stock.open")}
            </button>
          )}
          <button type="button" class="go go-quiet" onClick={() => setDoing("count")}>
            {t("stock.count")}
          </button>
          <button type="button" class="go go-quiet" onClick={() => setDoing("discard")}>
            {t("stock.discard")}
          </button>
          {alike.length > 0 && (
            <button type="button" class="go go-quiet" onClick={() => setDoing("merge")}>
              {t("stock.merge")}
            </button>
          )}
          <TakePhoto look="go go-quiet" kept="stock.photo_kept" onPick={async (file) => ((kept) => (typeof kept === "string" ? kept : "kept"))(await takeLotPhoto(lot.id, file))} />
          <button type="button" class="go go-quiet" onClick={() => void undoLastFact("lot", lot.id)}>
            {t("orders.undo")}
          </button>
        </>
      )}
      {lot.photo_id && <LabelPhoto id={lot.photo_id} />}
      <StreamHistory of="lot" id={lot.id} document={lot} more={(_, body) => ({ amount: amountWords(Number(body["left"] ?? body["amount"] ?? 0), lot.unit), ...(body["why"] ? { why: t(`stock.why_${String(body["why"])}`) } : {}) })} />
      <a class="go go-quiet" href="/stock">
        {t("button.back")}
      </a>
    </div>
  );
}

/** The photo of its label; a tap shows it large. */
function LabelPhoto({ id }: { id: string }) {
  const [open, setOpen] = useState(false);
  const found = usePhoto(id);
  if (typeof found === "string") return <p class="photo-missing">{t(`photo.${found}`)}</p>;
  return (
    <div class="photos">
      <button type="button" class="photo" onClick={() => setOpen(true)}>
        <img src={found.url} alt={t("stock.label_photo")} />
      </button>
      {open && <PhotoView url={found.url} words={t("stock.label_photo")} onClose={() => setOpen(false)} />}
    </div>
  );
}

/** An amount that is counted or thrown away, looked at by the engine before it is kept. */
function Amount({ lot, kind, field, label, button, onDone }: { lot: Lot; kind: "left_counted" | "discarded"; field: string; label: string; button: string; onDone: () => void }) {
  const [value, setValue] = useState<number | null>(null);
  const [why, setWhy] = useState("other");
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const [warnings, setWarnings] = useState<Warning[]>([]);
  const keep = async () => {
    if (value === null) return;
    const body: Values = kind === "discarded" ? { [field]: value, why } : { [field]: value };
    try {
      const checked = await checkLot(lot.id, kind, body);
      if (checked.warnings.length > 0 && warnings.length === 0) return setWarnings(checked.warnings);
      await writeFact("lot", lot.id, kind, body);
      onDone();
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setProblem(error.problem);
    }
  };
  return (
    <form class="card" onSubmit={(event) => (event.preventDefault(), void keep())}>
      <QuantityField label={label} name={lot.unit === "kg" ? `${field}_kg` : field} value={value} problem={null} onValue={(next) => (setValue(next), setProblem(null), setWarnings([]))} />
      {kind === "discarded" && <ChoiceField label={t("stock.why")} value={why} options={WHY.map((one) => ({ value: one, label: t(`stock.why_${one}`) }))} onValue={setWhy} />}
      {problem && <p class="card card-wrong" role="alert">{problemText(problem)}</p>}
      {warnings.map((one) => (
        <p class="warning-line" role="alert" key={one.code}>
          {t(`warning.${one.code}`, one.values as Values)}
        </p>
      ))}
      <button type="submit" class="go" aria-disabled={value === null}>
        {warnings.length > 0 ? t("stock.all_the_same") : button}
      </button>
      <button type="button" class="go go-quiet" onClick={onDone}>
        {t("button.back")}
      </button>
    </form>
  );
}

/** One delivery that was written down twice belongs to the other lot. */
function Merge({ lot, alike, onDone }: { lot: Lot; alike: Lot[]; onDone: () => void }) {
  return (
    <section class="card">
      <p>{t("stock.merge_how")}</p>
      {alike.slice(0, 8).map((one) => (
        <button type="button" class="go go-quiet" key={one.id} onClick={() => void writeFact("lot", lot.id, "merged", { into_lot_id: one.id, adds: false }).then(onDone)}>
          {lotTitle(one)} {one.received_ms !== null && formatDay(one.received_ms)}
        </button>
      ))}
      <button type="button" class="go go-quiet" onClick={onDone}>
        {t("button.back")}
      </button>
    </section>
  );
}
