import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { TrayMap } from "../../ui/pictures/TrayMap";
import { MELTING, meltedLadder } from "../shared/burstLadderData";
import type { PictureProps } from "../kindViews";
import { type Sizes, trayOf } from "./tray";

const LAYING = ["lay", "second", "under"];

export const hasPicture = (step: string): boolean => MELTING.includes(step) || LAYING.includes(step);

/** The ladder while melting, the tray while laying. */
export function ClusterPicture({ plan, run, advice }: PictureProps<"cluster">) {
  if (LAYING.includes(advice.step)) return <TrayMap tray={trayOf(plan, advice.more?.values["sizes"] as Sizes | undefined)} place="bench" />;
  const ladder = run.melt && MELTING.includes(advice.step) ? meltedLadder(plan, run.melt, advice) : null;
  return ladder?.rungs.length ? <BurstLadder ladder={ladder} place="bench" /> : null;
}
