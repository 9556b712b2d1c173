/** At the bench, of what is poured between bars: the ladder while it melts in an oven, the curve while it cools. */
import type { Advice, BenchEvent, SlabPlanReply, SlabRun } from "../../documents";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { MELTING, meltedLadder } from "./burstLadderData";
import { cooledSlab, COOLING } from "./cooling";

interface PouredPictureProps {
  plan: { reply: Pick<SlabPlanReply, "melt" | "melt_request" | "cool"> };
  events: BenchEvent[];
  run: Pick<SlabRun, "melt" | "cool" | "done">;
  advice: Advice;
  now: number;
}

export const hasPouredPicture = (step: string): boolean => MELTING.includes(step) || COOLING.includes(step);

export function PouredPicture({ plan, events, run, advice, now }: PouredPictureProps) {
  if (COOLING.includes(advice.step)) return <CoolingCurve cooling={cooledSlab(plan, events, run, now)} place="bench" />;
  const ladder = MELTING.includes(advice.step) ? meltedLadder(plan, run.melt, advice) : null;
  return ladder?.rungs.length ? <BurstLadder ladder={ladder} place="bench" /> : null;
}
