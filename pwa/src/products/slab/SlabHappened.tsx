import { t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { meltedLadder, plannedLadder } from "../shared/burstLadderData";
import type { RecordOf } from "../kindViews";
import { jacketOf } from "./slabPictures";


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
