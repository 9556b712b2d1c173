import type { BatchRecord } from "../../state";
import { formatDate, t } from "../../text";
import { Paper } from "../../ui/Paper";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { Timeline } from "../../ui/Timeline";
import { cooledSlab, jacketOf, meltedLadder, plannedLadder } from "../pictures";
import { Compared } from "../record/Compared";
import { happenings } from "../record/happenings";
import { Cautions, PaperFoot, PaperHead, Rests } from "./parts";

/** The record of a batch for the folder: planned against happened, what happened when, what the plan rested on. */
export function RecordPaper({ record, onClose }: { record: BatchRecord; onClose: () => void }) {
  const { plan, events, run, summary } = record;
  const jacket = jacketOf(run, null);
  const ladder = meltedLadder(plan, run, null);
  const lot = run.lot ?? plan.lot;
  const lines = [
    t("paper.made", { day: formatDate(summary.opened_at_ms) }),
    summary.closed_at_ms === null ? "" : t("paper.closed", { day: formatDate(summary.closed_at_ms) }),
    lot ? t("paper.lot", { lot }) : "",
  ];
  return (
    <Paper title={plan.name} onClose={onClose}>
      <PaperHead title={plan.name} lines={lines} />
      <div class="halves">
        <Compared record={record} />
        <Cautions />
      </div>
      <div class="halves">
        <section>
          <h2>{t("desk.melting")}</h2>
          <p class="quiet">{t(jacket ? "desk.jacket_happened" : "desk.ladder_happened")}</p>
          {jacket ? (
            <JacketLine jacket={jacket} place="desk" />
          ) : (
            <BurstLadder ladder={ladder.rungs.length ? ladder : plannedLadder(plan.reply)} place="desk" />
          )}
        </section>
        <section>
          <h2>{t("desk.cooling")}</h2>
          {run.done["melt"] === undefined && <p class="quiet">{t("desk.never_poured")}</p>}
          <CoolingCurve cooling={cooledSlab(plan, events, run, null)} place="desk" />
        </section>
      </div>
      <section>
        <h2>{t("desk.timeline")}</h2>
        <Timeline happenings={happenings(record)} />
        <p class="left-out" hidden />
      </section>
      <Rests inputs={plan.reply.inputs} />
      <PaperFoot />
    </Paper>
  );
}
