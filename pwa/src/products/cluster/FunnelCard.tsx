import { useEffect } from "preact/hooks";

import { type PlannedCluster, shop as shopSignal } from "../../state";
import { withoutEmpty } from "../shared/request";
import type { RecordOf } from "../kindViews";
import { FunnelGuide } from "./FunnelGuide";
import { lastChange } from "../shared/shopEdits";

/** After clusters are counted: what they teach of the funnel. Dipped ones are too late for the scale. */
export function FunnelCard({ record: { plan, summary } }: { record: RecordOf<"cluster"> }) {
  useEffect(() => () => void (lastChange.value = null), []);
  const shop = shopSignal.value;
  const product = shop?.products.find((one) => one.id === plan.product_id);
  if (plan.finish === "dipped" || summary.closed_at_ms === null || !shop || !product) return null;
  const { rows, deposit_kg, second_kg, spread_m, under, bed, material } = plan.request;
  const planned = withoutEmpty<PlannedCluster>({ deposit_kg: rows?.[0]?.deposit_kg ?? deposit_kg, second_kg, spread_m, under, bed, material });
  return (
    <div class="no-print">
      <FunnelGuide laid={[{ product, planned, several: (rows?.length ?? 0) > 1 }]} shop={shop} />
    </div>
  );
}
