import { useEffect, useState } from "preact/hooks";

import type { PackBoxesReply, ProblemDocument, Values, Warning } from "../../documents";
import { EngineProblem, problemAt } from "../../problems";
import { go } from "../../router";
import { type BatchRecord, bestByOf, boxesOf, checkPack, countedOf, dayOf, loadRecord, loadTrade, madeAt, newId, nextCode, packs, writeFact } from "../../state";
import { problemText, t } from "../../text";
import { CountField } from "../../ui/CountField";
import { Desk } from "../../ui/Desk";
import { TimeField, WordsField } from "../../ui/fields";
import { FilledLine } from "./PackedCard";
import { boxName } from "./packWords";

/** /batches/<id>/pack */
export function PackForm({ batchId }: { batchId: string }) {
  const [record, setRecord] = useState<BatchRecord | null | "loading">("loading");
  useEffect(() => void loadTrade().then(() => loadRecord(batchId)).then(setRecord, () => setRecord(null)), [batchId]);
  const counted = record && record !== "loading" ? countedOf(batchId, record.plan, record.run) : null;
  return (
    <Desk title={t("pack.begin")} here="records">
      {record === "loading" && <p class="card">{t("desk.starting")}</p>}
      {record === null && <p class="card">{t("desk.record_missing")}</p>}
      {record && record !== "loading" && !counted && <p class="card">{t("pack.not_counted")}</p>}
      {record && record !== "loading" && counted && <Filling record={record} />}
      <a class="go go-quiet" href={`/batches/${batchId}`}>
        {t("button.back")}
      </a>
    </Desk>
  );
}

interface Draft {
  box_id: string | null;
  count: number;
  code: string;
  made_on: string;
  best_by: string;
  seconds: boolean;
}

/** Which box, how many, under which code, until when. */
function Filling({ record }: { record: BatchRecord }) {
  const first = countedOf(record.summary.batch_id, record.plan, record.run)!;
  const made_on = dayOf(madeAt(record.run));
  const [draft, setDraft] = useState<Draft>({ box_id: null, count: 0, code: "", made_on, best_by: "", seconds: false });
  const [filled, setFilled] = useState<PackBoxesReply | null>(null);
  const [because, setBecause] = useState<string | null>(null);
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const [warnings, setWarnings] = useState<Warning[]>([]);
  const change = (part: Partial<Draft>) => {
    setProblem(null);
    setWarnings([]);
    setDraft((old) => ({ ...old, ...part }));
  };
  const choose = async (box_id: string, reply: PackBoxesReply) => {
    const row = reply.boxes.find((one) => one.box_id === box_id);
    const count = Math.max(1, row?.count ?? 1);
    try {
      const found = await bestByOf(made_on, box_id, record);
      setBecause(found ? (found.because ?? "") : null);
      change({ box_id, count, best_by: found?.best_by ?? "" });
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      change({ box_id, count, best_by: "" });
      setProblem(error.problem);
    }
  };
  useEffect(() => {
    const begin = async () => {
      const reply = await boxesOf(first, { box_id: null, count: null, seconds: false });
      setFilled(reply);
      const code = await nextCode(made_on);
      change({ code: code ?? "" });
      if (reply.boxes[0]) await choose(reply.boxes[0].box_id, reply);
    };
    begin().catch((error: unknown) => console.error("boxes:", error));
  }, []);
  const keep = async () => {
    if (draft.box_id === null || draft.count < 1) return;
    try {
      const taken = await boxesOf(first, draft);
      const body: Values = { ...draft, best_by: draft.best_by || null, from: taken.from, lots: taken.lots };
      const checked = await checkPack(null, "packed", body);
      const said: Warning[] = [...checked.warnings];
      if (taken.short > 0) said.push({ code: "pieces_short", values: { n: taken.short } });
      if (draft.code && [...packs.value.values()].some((pack) => pack.code === draft.code)) said.push({ code: "code_taken", values: { lot: draft.code } });
      if (said.length > 0 && warnings.length === 0) return setWarnings(said);
      const id = newId();
      await writeFact("pack", id, "packed", checked.body);
      go(`/packs/${id}`);
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setProblem(error.problem);
    }
  };
  if (!filled) return <p class="card">{t("desk.starting")}</p>;
  const left = filled.left.find((one) => one.batch_id === first.batch_id)?.pieces ?? 0;
  if (filled.boxes.length === 0) return <NoBox left={left} filled={filled} />;
  return (
    <form class="trade-form" onSubmit={(event) => (event.preventDefault(), void keep())}>
      <FilledLine good={left} filled={filled} box_id={draft.box_id} />
      <fieldset class="several">
        <legend>{t("pack.box")}</legend>
        {filled.boxes.map(({ box_id }) => (
          <button type="button" class="chip" key={box_id} aria-pressed={box_id === draft.box_id} onClick={() => void choose(box_id, filled)}>
            {boxName(box_id)}
          </button>
        ))}
        <button type="button" class="chip" aria-pressed={draft.seconds} onClick={() => change({ seconds: !draft.seconds })}>
          {t("pack.seconds")}
        </button>
      </fieldset>
      <CountField label={t("pack.count")} value={draft.count} least={1} most={100_000} onValue={(count) => change({ count })} />
      <WordsField label={t("pack.code")} value={draft.code} most={40} onValue={(code) => change({ code })} />
      <TimeField label={t("stock.best_by_field")} kind="date" value={draft.best_by} problem={problemAt(problem, "best_by")} onValue={(best_by) => change({ best_by })} />
      <p class="field-note">{because === null ? t("pack.no_shelf_life") : because ? t("pack.because", { name: because }) : t("pack.by_shelf_life")}</p>
      {problem && <p class="card card-wrong" role="alert">{problemText(problem)}</p>}
      {warnings.map((one) => (
        <p class="warning-line" role="alert" key={one.code}>
          {t(`warning.${one.code}`, one.values as Values)}
        </p>
      ))}
      <button type="submit" class="go" aria-disabled={draft.box_id === null}>
        {t(warnings.length > 0 ? "orders.all_the_same" : "pack.keep")}
      </button>
    </form>
  );
}

function NoBox({ left, filled }: { left: number; filled: PackBoxesReply }) {
  return (
    <>
      <FilledLine good={left} filled={filled} />
      <p class="card">{t("pack.no_box")}</p>
      <a class="go" href="/shop/boxes">
        {t("pack.to_boxes")}
      </a>
    </>
  );
}
