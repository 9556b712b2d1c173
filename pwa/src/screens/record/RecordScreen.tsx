import { useEffect, useState } from "preact/hooks";

import type { BenchEvent } from "../../documents";
import { EngineFailure } from "../../problems";
import { type BatchRecord, loadRecord, note, sync, takeBackThrownAway } from "../../state";
import { formatDay, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { Timeline } from "../../ui/Timeline";
import { LearnedLink } from "../learned/LearnedLink";
import { RecordPaper } from "../paper/RecordPaper";
import { SheetPaper } from "../paper/SheetPaper";
import { hasSheet, traitsOf } from "../../products/traitRegistry";
import { placeViewsOf } from "../../products/placeViews";
import { canTypeBack, TypeBack } from "../paper/TypeBack";
import { NoteForm } from "../NoteForm";
import { SetAside } from "../SetAside";
import { go } from "../../router";
import { happenings } from "./happenings";
import { LabelLines } from "../LabelLines";
import { CostCard } from "../pack/CostCard";
import { PackedCard } from "../pack/PackedCard";
import { Photos } from "./Photos";
import { TakeAlong } from "./TakeAlong";
import { Card } from "../../ui/Card";

type Loaded = BatchRecord | "loading" | "missing" | "failed" | "broken";

interface Props {
  batchId: string;
  /** "paper": the record as a printed page; "sheet": the batch as a sheet to fill in; "type": that sheet, typed back. */
  part: string | undefined;
}

/** A batch to look back at: planned against happened. */
export function RecordScreen({ batchId, part }: Props) {
  const [loaded, setLoaded] = useState<Loaded>("loading");
  const { unsent } = sync.value;
  useEffect(() => {
    let current = true;
    loadRecord(batchId).then(
      (record) => current && setLoaded(record ?? "missing"),
      (error: unknown) => current && setLoaded(error instanceof EngineFailure ? "broken" : "failed"),
    );
    return () => {
      current = false;
    };
    // What is written here, and what becomes of it on the server, is shown at once.
  }, [batchId, unsent]);
  if (typeof loaded === "string") {
    return (
      <Desk title={t("desk.record_title")} here="records">
        <p class="card">{t(loaded === "broken" ? "desk.engine_failed" : `desk.record_${loaded}`)}</p>
      </Desk>
    );
  }
  const back = () => go(`/batches/${batchId}`);
  if (part === "paper") return <RecordPaper record={loaded} onClose={back} />;
  const { plan, summary } = loaded;
  if (part === "sheet" && hasSheet(plan)) {
    const type = canTypeBack(loaded) ? () => go(`/batches/${batchId}/type`) : null;
    return <SheetPaper plan={plan} opened_at_ms={summary.opened_at_ms} onType={type} onClose={back} />;
  }
  if (part === "type" && hasSheet(plan)) return <TypeBack record={loaded} />;
  const taken = (event: BenchEvent) => setLoaded({ ...loaded, events: [...loaded.events, event] });
  return <RecordView record={loaded} onTaken={taken} />;
}

function RecordView({ record, onTaken }: { record: BatchRecord; onTaken: (event: BenchEvent) => void }) {
  const { plan, run, summary } = record;
  const { Cards } = placeViewsOf(plan.kind);
  return (
    <Desk title={plan.name} here="records">
      {!traitsOf(plan.kind).standsAlone && <LabelLines run={run} />}
      {run.thrown_away && (
        <button type="button" class="go go-quiet" onClick={() => void takeBackThrownAway(summary.batch_id, record.events)}>
          {t("button.take_it_back")}
        </button>
      )}
      <p class="quiet">
        {formatDay(summary.opened_at_ms)}
        {summary.closed_at_ms !== null && ` – ${formatDay(summary.closed_at_ms)}`}
      </p>
      <div class="record">
        {Cards && <Cards record={record} />}
        <PackedCard record={record} />
        <CostCard record={record} />
        <Photos record={record} onTaken={onTaken} />
        <Card title={t("desk.timeline")}>
          <Timeline happenings={happenings(record)} />
        </Card>
        <SetAside events={record.setAside} />
        <section class="card no-print">
          <h2>{t("button.write_note")}</h2>
          <NoteForm onKeep={(text) => note(summary.batch_id, text)} button="go go-quiet" />
        </section>
      </div>
      {summary.closed_at_ms !== null && <LearnedLink />}
      <TakeAlong record={record} />
    </Desk>
  );
}
