import type { SignalWord } from "../../documents";
import { CautionList, IN_OVEN, SETUP_CAUTIONS } from "../shared/paper";

const AT_THE_FUNNEL: [SignalWord, string][] = [
  ["WARNING", "caution.funnel_glove"],
  ["WARNING", "caution.allergens"],
  ["CAUTION", "caution.release"],
  ["WARNING", "caution.milk"],
  ["WARNING", "caution.allergen_lot"],
];

/** What may hurt somebody in a batch of clusters: no knife, but a hot funnel, and what lies under them. */
export function ClusterCautions() {
  return <CautionList cautions={[...SETUP_CAUTIONS, ...IN_OVEN, ...AT_THE_FUNNEL]} />;
}
