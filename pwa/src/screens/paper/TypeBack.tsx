import { useEffect, useRef, useState } from "preact/hooks";

import type { ProblemDocument } from "../../documents";
import { EngineProblem, keepSheetDraft, sheetDraft, type SlabRecord, typeBack } from "../../state";
import { formatDate, problemText, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { QuantityField, SwitchField, TimeField, WordsField } from "../../ui/fields";
import { useUnread } from "../../ui/useUnread";
import { go } from "../router";
import { emptyBurst, emptyLook, firstSheet, hasSheet, type Row, type SheetForm, sheetOf } from "./sheetForm";

/** A sheet is of a batch that no phone has gone on with. */
export function canTypeBack({ plan, run, summary }: SlabRecord): boolean {
  return hasSheet(plan) && summary.closed_at_ms === null && Object.keys(run.done).length === 0 && !run.melt.burning && run.melt.bursts.length === 0;
}

/** The batch sheet again, to be filled in from the paper one; a reload finds it as it was left. */
export function TypeBack({ record }: { record: SlabRecord }) {
  const [begun, setBegun] = useState<SheetForm | null>(null);
  useEffect(() => {
    void sheetDraft(record.summary.batch_id).then((found) => setBegun((found as SheetForm | null) ?? firstSheet(record)));
  }, []);
  return begun && <Filling record={record} begun={begun} />;
}

function Filling({ record, begun }: { record: SlabRecord; begun: SheetForm }) {
  const [form, setForm] = useState(begun);
  const [unread, read] = useUnread();
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const [state, setState] = useState<"" | "busy" | "failed">("");
  // Taps may come faster than the screen is drawn again.
  const writing = useRef(false);
  const batchId = record.summary.batch_id;
  const change = (part: Partial<SheetForm>) => setForm((old) => ({ ...old, ...part }));
  useEffect(() => {
    if (form !== begun) void keepSheetDraft(batchId, form);
  }, [form]);
  const keep = async () => {
    if (writing.current || unread.length > 0) return;
    writing.current = true;
    setState("busy");
    setProblem(null);
    try {
      await typeBack(record, sheetOf(form));
      await keepSheetDraft(batchId, null);
      go(`/batches/${batchId}`);
    } catch (error) {
      setState(error instanceof EngineProblem ? "" : "failed");
      if (error instanceof EngineProblem) setProblem(error.problem);
      writing.current = false;
    }
  };
  return (
    <Desk title={t("paper.type_title", { name: record.plan.name })} here="batches">
      {canTypeBack(record) ? (
        <form class="type-back" onSubmit={(event) => event.preventDefault()}>
          <p class="card quiet">{t("paper.type_how", { day: formatDate(record.summary.opened_at_ms) })}</p>
          <Boxes form={form} problem={problem} onChange={change} onRead={read} />
          {unread.length > 0 && <p class="card">{t("desk.cannot_read")}</p>}
          {problem && <p class="card card-wrong" role="alert">{problemText(problem)}</p>}
          {state === "failed" && <p class="card card-wrong">{t("desk.engine_failed")}</p>}
          <button type="button" class="go" aria-disabled={state === "busy" || unread.length > 0} onClick={() => void keep()}>
            {t("button.keep_sheet")}
          </button>
        </form>
      ) : (
        <p class="card">{t("paper.already_run")}</p>
      )}
    </Desk>
  );
}

interface BoxesProps {
  form: SheetForm;
  problem: ProblemDocument | null;
  onChange: (part: Partial<SheetForm>) => void;
  onRead: (name: string, fault: boolean) => void;
}

function Boxes({ form, problem, onChange, onRead }: BoxesProps) {
  const at = (field: string) => (problem?.field === field ? problem : null);
  const number = (name: "weighed_kg" | "pieces" | "rest_kg") => (
    <QuantityField key={name} label={t(`paper.type_${name}`)} name={name} value={form[name]} problem={at(name)} onValue={(value, fault) => (onRead(name, fault !== null), onChange({ [name]: value }))} />
  );
  const time = (name: "weighed_at_ms" | "poured_at_ms" | "cut_at_ms") => (
    <TimeField key={name} label={t(`paper.type_${name}`)} value={form[name]} problem={at(name)} onValue={(value) => onChange({ [name]: value })} />
  );
  return (
    <>
      <section class="card">
        <TimeField label={t("paper.type_day")} kind="date" value={form.day} problem={null} onValue={(day) => onChange({ day })} />
        <WordsField label={t("paper.box_who")} value={form.who} most={60} onValue={(who) => onChange({ who })} />
        <WordsField label={t("desk.row_lot")} value={form.lot} most={60} onValue={(lot) => onChange({ lot })} />
        <div class="pair">
          {time("weighed_at_ms")}
          {number("weighed_kg")}
        </div>
      </section>
      <section class="card">
        <h2>{t("desk.melting")}</h2>
        {form.bursts.map((row, index) => (
          <BurstRow key={index} row={row} number={index + 1} problem={problem} path={`bursts[${placeOf(form.bursts, index)}]`} onRead={(name, fault) => onRead(`burst ${index} ${name}`, fault)} onRow={(next) => onChange({ bursts: replaced(form.bursts, index, next) })} />
        ))}
        <div class="buttons">
          <button type="button" onClick={() => onChange({ bursts: [...form.bursts, emptyBurst()] })}>
            {t("button.more_bursts")}
          </button>
        </div>
        {time("poured_at_ms")}
      </section>
      <section class="card">
        <h2>{t("desk.cooling")}</h2>
        {form.slab.map((row, index) => (
          <LookRow key={index} row={row} number={index + 1} problem={problem} path={`slab[${placeOf(form.slab, index)}]`} onRead={(name, fault) => onRead(`look ${index} ${name}`, fault)} onRow={(next) => onChange({ slab: replaced(form.slab, index, next) })} />
        ))}
        <div class="buttons">
          <button type="button" onClick={() => onChange({ slab: [...form.slab, emptyLook()] })}>
            {t("button.more_looks")}
          </button>
        </div>
        {time("cut_at_ms")}
        <div class="pair">
          {number("pieces")}
          {number("rest_kg")}
        </div>
        <WordsField label={t("paper.box_notes")} value={form.notes} most={1000} onValue={(notes) => onChange({ notes })} />
      </section>
    </>
  );
}

/** The place a row has among those filled in: what the engine's paths count. */
function placeOf(rows: Row[], index: number): number {
  return rows.slice(0, index).filter((row) => !row.empty).length;
}

function replaced<T>(rows: T[], index: number, next: T): T[] {
  return rows.map((row, place) => (place === index ? next : row));
}

interface RowProps<R> {
  row: R;
  number: number;
  problem: ProblemDocument | null;
  path: string;
  onRow: (row: R) => void;
  onRead: (name: string, fault: boolean) => void;
}

function BurstRow({ row, number, problem, path, onRow, onRead }: RowProps<ReturnType<typeof emptyBurst>>) {
  const at = (field: string) => (!row.empty && problem?.field === `${path}.${field}` ? problem : null);
  const change = (part: Partial<typeof row>) => onRow(filledIn({ ...row, ...part }));
  const quantity = (name: "seconds_s" | "surface_c") => (
    <QuantityField label={t(`paper.type_${name}`)} name={name} value={row[name]} problem={at(name)} onValue={(value, fault) => (onRead(name, fault !== null), change({ [name]: value }))} />
  );
  return (
    <fieldset class="sheet-row">
      <legend>{t("paper.burst", { n: number })}</legend>
      <div class="pair">
        <TimeField label={t("paper.column_started")} value={row.at} problem={at("at_ms")} onValue={(value) => change({ at: value })} />
        {quantity("seconds_s")}
      </div>
      <div class="pair">
        <SwitchField legend={t("paper.column_free")} value={row.free} options={[{ value: "no", label: t("basis.no") }, { value: "yes", label: t("basis.yes") }]} onValue={(free) => change({ free })} />
        {quantity("surface_c")}
      </div>
    </fieldset>
  );
}

function LookRow({ row, number, problem, path, onRow, onRead }: RowProps<ReturnType<typeof emptyLook>>) {
  const at = (field: string) => (!row.empty && problem?.field === `${path}.${field}` ? problem : null);
  const change = (part: Partial<typeof row>) => onRow(filledIn({ ...row, ...part }));
  const options = [
    { value: "", label: "–" },
    { value: "no", label: t("paper.not_yet") },
    { value: "yes", label: t("basis.yes") },
  ];
  return (
    <fieldset class="sheet-row">
      <legend>{t("paper.look", { n: number })}</legend>
      <div class="pair">
        <TimeField label={t("paper.column_time")} value={row.at} problem={at("at_ms")} onValue={(value) => change({ at: value })} />
        <QuantityField label={t("paper.type_surface_c")} name="surface_c" value={row.surface_c} problem={at("surface_c")} onValue={(value, fault) => (onRead("surface_c", fault !== null), change({ surface_c: value }))} />
      </div>
      <SwitchField legend={t("paper.column_firm")} value={row.firm} options={options} onValue={(firm) => change({ firm })} />
    </fieldset>
  );
}

/** Says whether anything stands in a row. */
function filledIn<R extends Row>(row: R): R {
  const { empty: _empty, ...boxes } = row;
  return { ...row, empty: Object.values(boxes).every((value) => value === null || value === "" || value === "no") };
}
