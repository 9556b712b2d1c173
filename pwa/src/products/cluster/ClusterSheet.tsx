import type { ClusterPlan } from "../../documents";
import { t } from "../../text";
import { ByHand, degrees, Line, Melting } from "../shared/sheetParts";
import type { SheetBoxes } from "../kindViews";
import { ClusterSentences, TrayMaps } from "./ClusterAnswerCards";
import { PlanWarnings } from "../shared/Sentences";
import { ClusterCautions } from "./ClusterCautions";

/** Rows beyond the plan's own fills. */
const MORE_FILLS = 2;
/** Clusters to be laid without a phone. */
export function ClusterSheet({ plan }: { plan: ClusterPlan }) {
  return (
    <>
      <Melting reply={plan.reply} reheats={plan.reply.reheats} />
      <Halves plan={plan} />
      <ClusterCautions />
    </>
  );
}

/** Fills and trays to be filled in, and the plan in words; its picture is on the plan's own page. */
function Halves({ plan: { request, reply } }: { plan: ClusterPlan }) {
  const again = reply.second ? [t("desk.cluster_second_kg")] : [];
  return (
    <>
      <div class="halves">
        <div>
          <p class="fill">
            <span class="box">{t("say.allergens")}</span>
          </p>
          <p class="fill">
            {reply.under.map((one, index) => (
              <span key={index}>{lotOf(one)}</span>
            ))}
          </p>
          <ByHand heads={[t("clock.fill"), t("button.filled"), degrees("paper.type_surface_c")]} number={reply.fills + MORE_FILLS} row={(n) => [n, "", ""]} />
        </div>
        <div>
          <ByHand heads={[t("desk.cluster_tray"), t("event.tray_laid"), ...again, t("event.tray_freed_free")]} number={reply.trays + 1} row={(n) => [n, "", ...again.map(() => ""), ""]} />
          <Line names={["desk.row_clusters", "desk.row_loose"]} />
          <Line names={["paper.box_rest", "paper.box_notes"]} />
          <TrayMaps request={request} reply={reply} most={0} />
        </div>
      </div>
      <div class="wide">
        <ClusterSentences reply={reply} />
        <PlanWarnings reply={reply} />
      </div>
    </>
  );
}

function lotOf({ material }: ClusterPlan["reply"]["under"][number]): string {
  return typeof material === "string" ? t("say.under_lot_of", { materials: [material] }) : t("desk.row_under_lot");
}

/** The boxes of such a sheet where it is typed back. */
export const clusterBoxes = ({ reply }: ClusterPlan): SheetBoxes => ({
  weighing: ({ clear, underLot }) => [clear(), ...reply.under.map((one, index) => underLot(index, lotOf(one)))],
  after: ({ rows }) => (
    <>
      {rows("fills", (n) => `${t("clock.fill")} ${n}`)}
      {rows("trays", (n) => `${t("desk.cluster_tray")} ${n}`, reply.second ? "" : "second_at_ms")}
    </>
  ),
  pieces: "desk.row_clusters",
  rest: ({ number }) => number("loose_kg", "desk.row_loose"),
});
