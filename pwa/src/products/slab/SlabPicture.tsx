import { t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { SlabMap } from "../../ui/pictures/SlabMap";
import { cooledSlab, COOLING } from "../shared/cooling";
import { MELTING, meltedLadder } from "../shared/burstLadderData";
import type { PictureProps } from "../kindViews";
import { frameOf, jacketOf, slabOf } from "./slabPictures";

const SETTING = ["set_up", "pour"];
const CUTTING = ["score", "cut"];

export const hasPicture = (step: string): boolean => [MELTING, COOLING, SETTING, CUTTING].some((steps) => steps.includes(step));

/** The ladder while melting, the curve while cooling, the map while scoring and cutting. */
export function SlabPicture({ plan, events, run, advice, now, onMap }: PictureProps<"slab">) {
  const { step } = advice;
  const jacket = MELTING.includes(step) || step === "set_up" ? jacketOf(run, now) : null;
  if (jacket) return <JacketLine jacket={jacket} place="bench" />;
  if (MELTING.includes(step)) {
    const ladder = meltedLadder(plan, run.melt, advice);
    return ladder.rungs.length ? <BurstLadder ladder={ladder} place="bench" /> : null;
  }
  if (COOLING.includes(step)) return <CoolingCurve cooling={cooledSlab(plan, events, run, now)} place="bench" />;
  if (CUTTING.includes(step)) {
    return (
      <div class="picture-open">
        <SlabMap slab={slabOf(plan.reply)} place="bench" />
        <button type="button" class="picture-tap" aria-label={t("button.cut_lines")} onClick={onMap} />
      </div>
    );
  }
  if (SETTING.includes(step)) return <SlabMap slab={frameOf(plan.reply, advice.more?.values)} place="bench" />;
  return null;
}
