import type { Advice, BenchEvent, ClusterPlan, PlanDocument, Run, SlabPlan, SlabRun } from "../../documents";
import { t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { SlabMap } from "../../ui/pictures/SlabMap";
import { TrayMap } from "../../ui/pictures/TrayMap";
import { type Sizes, trayOf } from "../../products/cluster/tray";
import { meltedLadder } from "../../products/shared/ladder";
import { cooledSlab, frameOf, jacketOf, slabOf } from "../../products/slab/slabPictures";

const MELTING = ["burst", "turn", "stir", "read", "rest", "melt", "block_in", "soften", "look", "top_up"];
const COOLING = ["cool", "touch"];
const SETTING = ["set_up", "pour"];
const CUTTING = ["score", "cut"];

const LAYING = ["lay", "second", "under"];

/** Whether a picture belongs to a step; without one its words may stand large. */
export function hasPicture({ kind }: PlanDocument, step: string): boolean {
  if (kind === "cluster") return [...MELTING, ...LAYING].includes(step);
  return kind === "slab" && [MELTING, COOLING, SETTING, CUTTING].some((steps) => steps.includes(step));
}

interface Props<P, R> {
  plan: P;
  events: BenchEvent[];
  run: R;
  advice: Advice;
  now: number;
  onMap: () => void;
}

/** The picture of a step, where the kind of batch has one. */
export function BenchPicture(props: Props<PlanDocument, Run>) {
  if (props.plan.kind === "slab") return <SlabPicture {...(props as Props<SlabPlan, SlabRun>)} />;
  return props.plan.kind === "cluster" ? <ClusterPicture {...(props as Props<ClusterPlan, Run>)} /> : null;
}

/** The ladder while melting, the tray while laying. */
function ClusterPicture({ plan, run, advice }: Props<ClusterPlan, Run>) {
  if (LAYING.includes(advice.step)) return <TrayMap tray={trayOf(plan, advice.more?.values["sizes"] as Sizes | undefined)} place="bench" />;
  const ladder = run.melt && MELTING.includes(advice.step) ? meltedLadder(plan, run.melt, advice) : null;
  return ladder?.rungs.length ? <BurstLadder ladder={ladder} place="bench" /> : null;
}

/** The ladder while melting, the curve while cooling, the map while scoring and cutting. */
function SlabPicture({ plan, events, run, advice, now, onMap }: Props<SlabPlan, SlabRun>) {
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
