import { t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { SlabMap } from "../../ui/pictures/SlabMap";
import { plannedLadder } from "../shared/burstLadderData";
import type { RecordOf } from "../kindViews";
import { SlabCautions } from "./SlabCautions";
import { SlabCompared } from "./SlabCompared";
import { CooledPicture } from "../shared/PouredCards";
import { MeltedPicture } from "./SlabHappened";
import { slabOf } from "./slabPictures";
import { Card, Section } from "../../ui/Card";

/** Planned against happened, and the pictures of a slab. */
export function SlabCards({ record }: { record: RecordOf<"slab"> }) {
  const { plan, run } = record;
  return (
    <>
      <SlabCompared record={record} />
      <Card title={t("desk.melting")}>
        <MeltedPicture record={record} />
        {run.melt.bursts.length > 0 && (
          <details>
            <summary>{t("desk.as_planned")}</summary>
            <BurstLadder ladder={plannedLadder(plan.reply)} place="desk" />
          </details>
        )}
      </Card>
      <Card title={t("desk.cooling")}>
        <CooledPicture record={record} />
      </Card>
      <Card title={t("desk.slab_and_frame")}>
        <SlabMap slab={slabOf(plan.reply)} place="desk" />
      </Card>
    </>
  );
}

/** The same for the folder. */
export function SlabHalves({ record }: { record: RecordOf<"slab"> }) {
  return (
    <>
      <div class="halves">
        <SlabCompared record={record} />
        <SlabCautions jacket={Boolean(record.plan.reply.jacket)} />
      </div>
      <div class="halves">
        <Section title={t("desk.melting")}>
          <MeltedPicture record={record} />
        </Section>
        <Section title={t("desk.cooling")}>
          <CooledPicture record={record} />
        </Section>
      </div>
    </>
  );
}
