import { type BatchRecord, slabRecord, type SlabRecord } from "../../state";
import { formatDate, t } from "../../text";
import { Timeline } from "../../ui/Timeline";
import { BowlCompared, BowlPicture } from "../../products/chocolate/ChocolateCompared";
import { ClusterCards } from "../../products/cluster/ClusterCompared";
import { Compared } from "../../products/slab/SlabCompared";
import { happenings } from "../record/happenings";
import { CooledPicture, MeltedPicture } from "../../products/slab/SlabHappened";
import { StandCard } from "../../products/standup/StandupCard";
import { BatchPage, BowlCautions, Cautions, ClusterCautions, Rests } from "../../products/shared/paper";

/** The record of a batch for the folder: planned against happened, what happened when, what the plan rested on. */
export function RecordPaper({ record, onClose }: { record: BatchRecord; onClose: () => void }) {
  const { plan, run, summary } = record;
  const lot = run.lot ?? plan.lot;
  const slab = slabRecord(record);
  const lines = [
    t("paper.made", { day: formatDate(summary.opened_at_ms) }),
    summary.closed_at_ms === null ? "" : t("paper.closed", { day: formatDate(summary.closed_at_ms) }),
    lot ? t("paper.lot", { lot }) : "",
  ];
  return (
    <BatchPage title={plan.name} lines={lines} onClose={onClose}>
      {slab ? <SlabHalves record={slab} /> : plan.kind === "cluster" ? <ClusterHalves record={record} /> : plan.kind === "standup" ? <StandCard record={record} /> : <BowlHalves record={record} />}
      <section>
        <h2>{t("desk.timeline")}</h2>
        <Timeline happenings={happenings(record)} />
        <p class="left-out" hidden />
      </section>
      <Rests inputs={plan.reply.inputs} />
    </BatchPage>
  );
}

function SlabHalves({ record }: { record: SlabRecord }) {
  return (
    <>
      <div class="halves">
        <Compared record={record} />
        <Cautions jacket={Boolean(record.plan.reply.jacket)} />
      </div>
      <div class="halves">
        <section>
          <h2>{t("desk.melting")}</h2>
          <MeltedPicture record={record} />
        </section>
        <section>
          <h2>{t("desk.cooling")}</h2>
          <CooledPicture record={record} />
        </section>
      </div>
    </>
  );
}

function ClusterHalves({ record }: { record: BatchRecord }) {
  return (
    <div class="halves">
      <ClusterCards record={record} />
      <ClusterCautions />
    </div>
  );
}

function BowlHalves({ record }: { record: BatchRecord }) {
  return (
    <div class="halves">
      <BowlCompared record={record} />
      <section>
        <h2>{t("desk.bowl_happened")}</h2>
        <BowlPicture record={record} />
        <BowlCautions />
      </section>
    </div>
  );
}
