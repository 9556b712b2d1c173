import { useEffect, useState } from "preact/hooks";

import type { Pack, ProblemDocument } from "../../documents";
import { EngineProblem } from "../../problems";
import { checkPack, loadTrade, packs, summaries, undoLastFact, writeFact } from "../../state";
import { formatDay, formatDayOf, problemText, t } from "../../text";
import { CountField } from "../../ui/CountField";
import { Desk } from "../../ui/Desk";
import { WordsField } from "../../ui/fields";
import { StreamHistory } from "../StreamHistory";
import { NetCheck } from "./NetCheck";
import { boxName } from "./packWords";

/** /packs/<id> */
export function PackScreen({ packId }: { packId: string }) {
  const [loaded, setLoaded] = useState(false);
  useEffect(() => void loadTrade().then(() => setLoaded(true)), []);
  const pack = packs.value.get(packId);
  return (
    <Desk title={pack ? pack.code || boxName(pack.box_id) : t("pack.title")} here="records">
      {loaded && !pack && <p class="card">{t("orders.not_here")}</p>}
      {pack && <PackPage pack={pack} />}
      <a class="go go-quiet" href={pack?.from[0] ? `/batches/${pack.from[0].batch_id}` : "/batches"}>
        {t("button.back")}
      </a>
    </Desk>
  );
}

/** Boxes packed together: how many are left, what they are of, their net contents, and what one may do. */
function PackPage({ pack }: { pack: Pack }) {
  const [taking, setTaking] = useState(false);
  const nameOf = (batchId: string) => summaries.value.find((one) => one.batch_id === batchId)?.name ?? t("pack.a_batch");
  return (
    <>
      <section class="card">
        <p class="answer">{t("pack.in_hand", { count: pack.count, box: boxName(pack.box_id) })}</p>
        {pack.seconds && <p>{t("pack.are_seconds")}</p>}
        {pack.at_ms !== null && <p>{t("pack.packed_on", { when: formatDay(pack.at_ms) })}</p>}
        {pack.best_by && <p>{t("stock.best_by", { day: formatDayOf(pack.best_by) })}</p>}
        <ul class="plain">
          {pack.from.map((one) => (
            <li key={one.batch_id}>
              <a href={`/batches/${one.batch_id}`}>{t("pack.from_batch", { n: one.pieces, name: nameOf(one.batch_id) })}</a>
            </li>
          ))}
        </ul>
      </section>
      <NetCheck pack={pack} />
      <a class="go go-quiet" href={`/label/${pack.id}`}>
        {t("labels.print")}
      </a>
      <a class="go go-quiet" href={`/trace/pack/${pack.id}`}>
        {t("trace.both_ways")}
      </a>
      {taking && <TakeBack pack={pack} onDone={() => setTaking(false)} />}
      {!taking && pack.count > 0 && (
        <button type="button" class="go go-quiet" onClick={() => setTaking(true)}>
          {t("pack.take_back")}
        </button>
      )}
      <button type="button" class="go go-quiet" onClick={() => void undoLastFact("pack", pack.id)}>
        {t("orders.undo")}
      </button>
      <StreamHistory of="pack" id={pack.id} document={pack} />
    </>
  );
}

/** Boxes that were opened again: their pieces are loose. */
function TakeBack({ pack, onDone }: { pack: Pack; onDone: () => void }) {
  const [count, setCount] = useState(1);
  const [why, setWhy] = useState("");
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const keep = async () => {
    try {
      await writeFact("pack", pack.id, "unpacked", (await checkPack(pack, "unpacked", { count, why })).body);
      onDone();
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setProblem(error.problem);
    }
  };
  return (
    <form class="card" onSubmit={(event) => (event.preventDefault(), void keep())}>
      <CountField label={t("pack.take_back_count")} value={count} least={1} most={100_000} onValue={(next) => (setCount(next), setProblem(null))} />
      <WordsField label={t("stock.why")} value={why} most={200} onValue={setWhy} />
      {problem && <p class="card card-wrong" role="alert">{problemText(problem)}</p>}
      <button type="submit" class="go">
        {t("pack.take_back_keep")}
      </button>
      <button type="button" class="go go-quiet" onClick={onDone}>
        {t("button.back")}
      </button>
    </form>
  );
}
