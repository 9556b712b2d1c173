import type { SignalWord } from "../../documents";
import { CautionList, IN_OVEN, SETUP_CAUTIONS } from "../shared/paper";

const IN_JACKET: [SignalWord, string][] = [["WARNING", "caution.hot_water"]];
const AFTER: [SignalWord, string][] = [
  ["CAUTION", "caution.knife_cut"],
  ["WARNING", "caution.milk"],
  ["WARNING", "caution.allergen_lot"],
];

/** What may hurt somebody in a batch of a slab. */
export function SlabCautions({ jacket }: { jacket: boolean }) {
  return <CautionList cautions={[...SETUP_CAUTIONS, ...(jacket ? IN_JACKET : IN_OVEN), ...AFTER]} />;
}
