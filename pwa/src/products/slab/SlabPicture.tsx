import { t } from "../../text";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { SlabMap } from "../../ui/pictures/SlabMap";
import { MELTING } from "../shared/burstLadderData";
import { hasPouredPicture, PouredPicture } from "../shared/PouredPicture";
import type { PictureProps } from "../kindViews";
import { frameOf, jacketOf, slabOf } from "./slabPictures";

const SETTING = ["set_up", "pour"];
const CUTTING = ["score", "cut"];

export const hasPicture = (step: string): boolean => hasPouredPicture(step) || [SETTING, CUTTING].some((steps) => steps.includes(step));

/** The ladder while melting, the curve while cooling, the map while scoring and cutting. */
export function SlabPicture({ plan, events, run, advice, now, onMap }: PictureProps<"slab">) {
  const { step } = advice;
  const jacket = MELTING.includes(step) || step === "set_up" ? jacketOf(run, now) : null;
  if (jacket) return <JacketLine jacket={jacket} place="bench" />;
  if (hasPouredPicture(step)) return <PouredPicture plan={plan} events={events} run={run} advice={advice} now={now} />;
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
