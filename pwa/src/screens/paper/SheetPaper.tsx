import type { PlanDocument } from "../../documents";
import { BatchPage } from "../../products/shared/paper";
import { Line } from "../../products/shared/sheetParts";
import { placeViewsOf } from "../../products/placeViews";
import { formatDate, t } from "../../text";

interface Props {
  plan: PlanDocument;
  opened_at_ms: number;
  /** Leads to where the sheet is typed back; null where it cannot be. */
  onType: (() => void) | null;
  onClose: () => void;
}

/** A batch to run without a phone: what to do, and empty boxes for what happens. */
export function SheetPaper({ plan, opened_at_ms, onType, onClose }: Props) {
  const { Sheet } = placeViewsOf(plan.kind);
  const type = onType && (
    <button type="button" class="go go-quiet" onClick={onType}>
      {t("button.type_back")}
    </button>
  );
  return (
    <BatchPage title={plan.name} lines={[t("paper.sheet"), t("paper.plan_of", { day: formatDate(opened_at_ms) })]} onClose={onClose} more={type}>
      <Line names={["paper.box_day", "paper.box_who", "paper.box_lot"]} />
      {Sheet && <Sheet plan={plan} />}
    </BatchPage>
  );
}
