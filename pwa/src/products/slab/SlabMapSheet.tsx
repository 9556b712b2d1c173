import type { SlabPlan } from "../../documents";
import { t } from "../../text";
import { CutList, SlabMap } from "../../ui/pictures/SlabMap";
import { Sheet } from "../../ui/Sheet";
import { slabOf } from "./slabPictures";

/** The map large, and every cut line's distance in figures. */
export function SlabMapSheet({ plan, onClose }: { plan: SlabPlan; onClose: () => void }) {
  const slab = slabOf(plan.reply);
  return (
    <Sheet title={t("screen.cut_lines")} onClose={onClose}>
      <SlabMap slab={slab} place="bench" />
      <CutList slab={slab} />
    </Sheet>
  );
}
