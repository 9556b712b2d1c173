import { Fragment } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

import type { PlanDocument, ProblemDocument } from "../../documents";
import { type BatchRecord, EngineProblem, keepSheetDraft, sheetDraft, typeBack } from "../../state";
import { problemAt } from "../../problems";
import { formatDate, problemText, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { QuantityField, SwitchField, TimeField, WordsField } from "../../ui/fields";
import { useUnparsableFields } from "../../ui/useUnparsableFields";
import { hasSheet } from "../../products/traitRegistry";
import { placeViewsOf } from "../../products/placeViews";
import { go } from "../../router";
import { type BoxTools, emptyRow, firstSheet, hasLevels, isQuantity, isRowEmpty, oldCaramelIn, type Row, type SheetForm, sheetOf, type Table } from "../../products/shared/typedBackForm";
import { Card } from "../../ui/Card";

/** A sheet is of a batch that no phone has gone on with. */
export function canTypeBack({ plan, run, summary }: BatchRecord): boolean {
  return hasSheet(plan) && summary.closed_at_ms === null && Object.keys(run.done).length === 0 && !run.melt?.burning && !run.melt?.bursts.length;
}

/** The batch sheet again, to be filled in from the paper one; a reload finds it as it was left. */
export function TypeBack({ record }: { record: BatchRecord }) {
  const [begun, setBegun] = useState<SheetForm | null>(null);
  useEffect(() => {
    void sheetDraft(record.summary.batch_id).then((found) => setBegun((found as SheetForm | null) ?? firstSheet(record)));
  }, []);
  return begun && <Filling record={record} begun={begun} />;
}

function Filling({ record, begun }: { record: BatchRecord; begun: SheetForm }) {
  const [form, setForm] = useState(begun);
  const [unparsable, setParseState] = useUnparsableFields();
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
    if (writing.current || unparsable.length > 0) return;
    writing.current = true;
    setState("busy");
    setProblem(null);
    try {
      await typeBack(record, sheetOf(form, record));
      await keepSheetDraft(batchId, null);
      go(`/batches/${batchId}`);
    } catch (error) {
      setState(error instanceof EngineProblem ? "" : "failed");
      if (error instanceof EngineProblem) setProblem(error.problem);
      writing.current = false;
    }
  };
  return (
    <Desk title={t("paper.type_title", { name: record.plan.name })} here="records">
      {canTypeBack(record) ? (
        <form class="type-back" onSubmit={(event) => event.preventDefault()}>
          <p class="card quiet">{t("paper.type_how", { day: formatDate(record.summary.opened_at_ms) })}</p>
          <Boxes plan={record.plan} form={form} problem={problem} onChange={change} onParseState={setParseState} />
          {unparsable.length > 0 && <p class="card">{t("desk.cannot_read")}</p>}
          {problem && <p class="card card-wrong" role="alert">{problemText(problem, labelOf(problem.field))}</p>}
          {state === "failed" && <p class="card card-wrong">{t("desk.engine_failed")}</p>}
          <button type="button" class="go" aria-disabled={state === "busy" || unparsable.length > 0} onClick={() => void keep()}>
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
  plan: PlanDocument;
  form: SheetForm;
  problem: ProblemDocument | null;
  onChange: (part: Partial<SheetForm>) => void;
  onParseState: (name: string, fault: boolean) => void;
}

/** What draws the boxes: each knows its value, its problem and where it is kept. */
function toolsFor({ form, problem, onChange, onParseState }: BoxesProps): BoxTools {
  const at = (field: string) => problemAt(problem, field);
  return {
    number: (name, label = `paper.type_${name}`) => (
      <QuantityField key={name} label={t(label)} name={name} value={form[name] ?? null} problem={at(name)} onValue={(value, fault) => (onParseState(name, fault !== null), onChange({ [name]: value }))} />
    ),
    time: (name) => <TimeField key={name} label={t(`paper.type_${name}`)} value={form[name]} problem={at(name)} onValue={(value) => onChange({ [name]: value })} />,
    underLot: (index, label) => (
      <WordsField key={label} label={label} value={form.under_lots?.[index] ?? ""} most={60} onValue={(lot) => onChange({ under_lots: Object.assign([...(form.under_lots ?? [])], { [index]: lot }) })} />
    ),
    clear: () => <SwitchField legend={t("say.allergens")} value={form.clear} options={NO_YES()} onValue={(clear) => onChange({ clear })} />,
    rows: (table, title, left = "") => <Rows table={table} title={title} rows={form[table]} left={left} problem={problem} onParseState={onParseState} onRows={(next) => onChange({ [table]: next })} />,
    more: (table, label) => (
      <div class="buttons">
        <button type="button" onClick={() => onChange({ [table]: [...form[table], emptyRow(table)] })}>
          {t(label)}
        </button>
      </div>
    ),
  };
}

function Boxes(props: BoxesProps) {
  const { plan, form, onChange } = props;
  const tools = toolsFor(props);
  const { number, time, rows, more } = tools;
  const own = placeViewsOf(plan.kind).boxes?.(plan);
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
        {oldCaramelIn(plan) > 0 && number("old_kg")}
        {own?.weighing?.(tools)}
      </section>
      <Card title={t("desk.melting")}>
        {rows("bursts", (n) => t("paper.burst", { n }), "melt_request" in plan.reply && hasLevels(plan.reply.melt_request) ? "" : "level_percent")}
        {more("bursts", "button.more_bursts")}
        {own?.melting?.(tools)}
      </Card>
      <section class="card">
        {own?.after(tools)}
        <div class="pair">
          {number("pieces", own?.pieces)}
          {number("rest_kg")}
        </div>
        {own?.rest?.(tools)}
        <WordsField label={t("paper.box_notes")} value={form.notes} most={1000} onValue={(notes) => onChange({ notes })} />
      </section>
    </>
  );
}

const NO_YES = () => ["no", "yes"].map((value) => ({ value, label: t(`basis.${value}`) }));

/** What stands over a box. */
const LABELS: Record<string, string> = {
  seconds_s: "paper.type_seconds_s",
  level_percent: "paper.type_level_percent",
  surface_c: "paper.type_surface_c",
  free: "paper.column_free",
  firm: "paper.column_firm",
  laid_at_ms: "event.tray_laid",
  second_at_ms: "desk.cluster_second_kg",
  freed_at_ms: "event.tray_freed_free",
  loose_kg: "desk.row_loose",
};

function labelOf(path: string): string | undefined {
  const found = LABELS[path.split(".").at(-1) ?? ""];
  return found && t(found);
}

const AT: Record<Table, string> = { bursts: "paper.column_started", slab: "paper.column_time", fills: "button.filled", trays: "" };

interface RowsProps {
  table: Table;
  title: (n: number) => string;
  rows: Row[];
  /** A box that the plan has no use for. */
  left: string;
  problem: ProblemDocument | null;
  onParseState: (name: string, fault: boolean) => void;
  onRows: (rows: Row[]) => void;
}

/** The rows of a table, two boxes beside each other. */
function Rows({ table, title, rows, left, problem, onParseState, onRows }: RowsProps) {
  const drawn = (row: Row, index: number, box: string) => {
    const path = `${table}[${rows.slice(0, index).filter((one) => !isRowEmpty(one)).length}].${box === "at" ? "at_ms" : box}`;
    // An empty row has no place of its own among those filled in; the first says what all are missing.
    const wrong = index === 0 || !isRowEmpty(row) ? problemAt(problem, path) : null;
    const label = t(box === "at" ? AT[table] : (LABELS[box] ?? ""));
    const put = (value: string | number | null) => onRows(rows.map((one, place) => (place === index ? { ...one, [box]: value } : one)));
    const value = row[box] ?? null;
    if (isQuantity(box)) return <QuantityField label={label} name={box} value={value as number | null} problem={wrong} onValue={(next, fault) => (onParseState(`${table} ${index} ${box}`, fault !== null), put(next))} />;
    if (box === "free") return <SwitchField legend={label} value={String(value)} options={NO_YES()} onValue={put} />;
    if (box === "firm") return <SwitchField legend={label} value={String(value)} options={[{ value: "", label: "–" }, { value: "no", label: t("paper.not_yet") }, { value: "yes", label: t("basis.yes") }]} onValue={put} />;
    return <TimeField label={label} value={String(value)} problem={wrong} onValue={put} />;
  };
  return (
    <>
      {rows.map((row, index) => {
        const boxes = Object.keys(row).filter((box) => box !== "empty" && box !== left);
        return (
          <fieldset class="sheet-row" key={index}>
            <legend>{title(index + 1)}</legend>
            {[0, 2, 4].slice(0, Math.ceil(boxes.length / 2)).map((first) => (
              <div class="pair" key={first}>
                {boxes.slice(first, first + 2).map((box) => (
                  <Fragment key={box}>{drawn(row, index, box)}</Fragment>
                ))}
              </div>
            ))}
          </fieldset>
        );
      })}
    </>
  );
}
