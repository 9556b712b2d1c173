import { useEffect, useState } from "preact/hooks";

import { correctedMs } from "../../order";
import { type BatchRecord, loadRecord } from "../../state";
import { formatDay, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { SlabMap } from "../../ui/pictures/SlabMap";
import { type Happening, Timeline } from "../../ui/Timeline";
import { cooledSlab, jacketOf, meltedLadder, plannedLadder, slabOf } from "../pictures";
import { Compared } from "./Compared";

type Loaded = BatchRecord | "loading" | "missing" | "failed";

/** A batch to look back at: planned against happened. */
export function RecordScreen({ batchId }: { batchId: string }) {
  const [loaded, setLoaded] = useState<Loaded>("loading");
  useEffect(() => {
    let current = true;
    loadRecord(batchId).then(
      (record) => current && setLoaded(record ?? "missing"),
      () => current && setLoaded("failed"),
    );
    return () => {
      current = false;
    };
  }, [batchId]);
  if (typeof loaded === "string") {
    return (
      <Desk title={t("desk.record_title")} here="batches">
        <p class="card">{t(`desk.record_${loaded}`)}</p>
      </Desk>
    );
  }
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
      </div>
      <button type="button" class="go go-quiet no-print" onClick={() => print()}>
        {t("button.print")}
      </button>
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

/** The log in its order, with what was taken back and what did not fit marked; `undone` itself is not a line. */
function happenings({ events, run }: BatchRecord): Happening[] {
  const undone = new Set(events.filter((one) => one.kind === "undone").map((one) => one.body["event_id"]));
  const ignored = new Set(run.ignored.map((one) => one.id));
  return events
    .filter((one) => one.kind !== "undone" && one.kind !== "cooling_refitted")
    .map((one) => ({
      id: one.id,
      at_ms: correctedMs(one),
      kind: one.kind,
      body: one.body,
      undone: undone.has(one.id),
      ignored: ignored.has(one.id),
    }));
}
