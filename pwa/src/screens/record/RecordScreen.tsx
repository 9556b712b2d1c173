import { useEffect, useState } from "preact/hooks";

import { type BatchRecord, loadRecord, note, sync } from "../../state";
import { formatDay, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { SlabMap } from "../../ui/pictures/SlabMap";
import { Timeline } from "../../ui/Timeline";
import { cooledSlab, jacketOf, meltedLadder, plannedLadder, slabOf } from "../pictures";
import { RecordPaper } from "../paper/RecordPaper";
import { SheetPaper } from "../paper/SheetPaper";
import { hasSheet } from "../paper/sheetForm";
import { canTypeBack, TypeBack } from "../paper/TypeBack";
import { NoteForm } from "../NoteForm";
import { go } from "../router";
import { Compared } from "./Compared";
import { happenings } from "./happenings";
import { Taking } from "./Taking";

type Loaded = BatchRecord | "loading" | "missing" | "failed";

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
      () => current && setLoaded("failed"),
    );
    return () => {
      current = false;
    };
    // What is written here, and what becomes of it on the server, is shown at once.
  }, [batchId, unsent]);
  if (typeof loaded === "string") {
    return (
      <Desk title={t("desk.record_title")} here="batches">
        <p class="card">{t(`desk.record_${loaded}`)}</p>
      </Desk>
    );
  }
  const back = () => go(`/batches/${batchId}`);
  if (part === "paper") return <RecordPaper record={loaded} onClose={back} />;
  if (part === "sheet" && hasSheet(loaded.plan.reply)) {
    const type = canTypeBack(loaded) ? () => go(`/batches/${batchId}/type`) : null;
    return <SheetPaper record={loaded} onType={type} onClose={back} />;
  }
  if (part === "type") return <TypeBack record={loaded} />;
  return <RecordView record={loaded} />;
}

function RecordView({ record }: { record: BatchRecord }) {
  const { plan, events, run, summary } = record;
  const poured = run.done["melt"] !== undefined;
  return (
    <Desk title={plan.name} here="batches">
      <p class="quiet">
        {formatDay(summary.opened_at_ms)}
        {summary.closed_at_ms !== null && ` – ${formatDay(summary.closed_at_ms)}`}
      </p>
      <div class="record">
        <Compared record={record} />
        <Melted record={record} />
        <section class="card">
          <h2>{t("desk.cooling")}</h2>
          {!poured && <p class="quiet">{t("desk.never_poured")}</p>}
          <CoolingCurve cooling={cooledSlab(plan, events, run, null)} place="desk" />
        </section>
        <section class="card">
          <h2>{t("desk.slab_and_frame")}</h2>
          <SlabMap slab={slabOf(plan.reply)} place="desk" />
        </section>
        <section class="card">
          <h2>{t("desk.timeline")}</h2>
          <Timeline happenings={happenings(record)} />
        </section>
        <section class="card no-print">
          <h2>{t("button.write_note")}</h2>
          <NoteForm onKeep={(text) => note(summary.batch_id, text)} button="go go-quiet" />
        </section>
      </div>
      {summary.closed_at_ms !== null && (
        <a class="row-link no-print" href="/learned">
          <b>{t("learned.title")}</b>
          <span>{t("learned.in_short")}</span>
        </a>
      )}
      <Taking record={record} />
    </Desk>
  );
}

/** The melt as it went: the ladder of an oven, or the line of a water jacket. */
function Melted({ record: { plan, run } }: { record: BatchRecord }) {
  const jacket = jacketOf(run, null);
  const ladder = meltedLadder(plan, run, null);
  return (
    <section class="card">
      <h2>{t("desk.melting")}</h2>
      <p class="quiet">{t(jacket ? "desk.jacket_happened" : "desk.ladder_happened")}</p>
      {jacket ? (
        <JacketLine jacket={jacket} place="desk" />
      ) : (
        <BurstLadder ladder={ladder.rungs.length ? ladder : plannedLadder(plan.reply)} place="desk" />
      )}
      {!jacket && ladder.rungs.length > 0 && (
        <details>
          <summary>{t("desk.as_planned")}</summary>
          <BurstLadder ladder={plannedLadder(plan.reply)} place="desk" />
        </details>
      )}
    </section>
  );
}
