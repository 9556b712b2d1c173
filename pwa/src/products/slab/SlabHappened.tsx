import { t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { meltedLadder, plannedLadder } from "../shared/burstLadderData";
import type { RecordOf } from "../kindViews";
import { cooledSlab, jacketOf } from "./slabPictures";


/** The melt as it went: the ladder of an oven, or the line of a water jacket. */
export function MeltedPicture({ record: { plan, run } }: { record: RecordOf<"slab"> }) {
  const jacket = jacketOf(run, null);
  const ladder = meltedLadder(plan, run.melt, null);
  return (
    <>
      <p class="quiet">{t(jacket ? "desk.jacket_happened" : "desk.ladder_happened")}</p>
      {jacket ? (
        <JacketLine jacket={jacket} place="desk" />
      ) : (
        <BurstLadder ladder={ladder.rungs.length ? ladder : plannedLadder(plan.reply)} place="desk" />
      )}
    </>
  );
}

/** The cooling as it went, or as planned where nothing was poured. */
export function CooledPicture({ record: { plan, events, run } }: { record: RecordOf<"slab"> }) {
  return (
    <>
      {run.done["melt"] === undefined && <p class="quiet">{t("desk.never_poured")}</p>}
      <CoolingCurve cooling={cooledSlab(plan, events, run, null)} place="desk" />
    </>
  );
}
