import type { BatchRecord } from "../../state";
import { formatDate, t } from "../../text";
import { Timeline } from "../../ui/Timeline";
import { happenings } from "../record/happenings";
import { labelLines } from "../LabelLines";
import { traitsOf } from "../../products/traitRegistry";
import { BatchPage, BasisList } from "../../products/shared/paper";
import { placeViewsOf } from "../../products/placeViews";
import { Section } from "../../ui/Card";

/** The record of a batch for the folder: planned against happened, what happened when, what the plan rested on. */
export function RecordPaper({ record, onClose }: { record: BatchRecord; onClose: () => void }) {
  const { plan, run, summary } = record;
  const lot = run.lot ?? plan.lot;
  const { Paper } = placeViewsOf(plan.kind);
  const lines = [
    t("paper.made", { day: formatDate(summary.opened_at_ms) }),
    summary.closed_at_ms === null ? "" : t("paper.closed", { day: formatDate(summary.closed_at_ms) }),
    lot ? t("paper.lot", { lot }) : "",
    ...(traitsOf(plan.kind).standsAlone ? [] : labelLines(run)),
  ];
  return (
    <BatchPage title={plan.name} lines={lines} onClose={onClose}>
      {Paper && <Paper record={record} />}
      <Section title={t("desk.timeline")}>
        <Timeline happenings={happenings(record)} />
        <p class="left-out" hidden />
      </Section>
      <BasisList inputs={plan.reply.inputs} />
    </BatchPage>
  );
}
