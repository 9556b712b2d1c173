import { t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { SlabMap } from "../../ui/pictures/SlabMap";
import { plannedLadder } from "../shared/ladder";
import type { RecordOf } from "../view";
import { SlabCautions } from "./SlabCautions";
import { SlabCompared } from "./SlabCompared";
import { CooledPicture, MeltedPicture } from "./SlabHappened";
import { slabOf } from "./slabPictures";

/** Planned against happened, and the pictures of a slab. */
export function SlabCards({ record }: { record: RecordOf<"slab"> }) {
  const { plan, run } = record;
  return (
    <>
      <SlabCompared record={record} />
      <section class="card">
        <h2>{t("desk.melting")}</h2>
        <MeltedPicture record={record} />
        {run.melt.bursts.length > 0 && (
          <details>
            <summary>{t("desk.as_planned")}</summary>
            <BurstLadder ladder={plannedLadder(plan.reply)} place="desk" />
          </details>
        )}
      </section>
      <section class="card">
        <h2>{t("desk.cooling")}</h2>
        <CooledPicture record={record} />
      </section>
      <section class="card">
        <h2>{t("desk.slab_and_frame")}</h2>
        <SlabMap slab={slabOf(plan.reply)} place="desk" />
      </section>
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
