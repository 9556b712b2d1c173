import type { ClusterPlan, ClusterState, Run } from "../../documents";
import { format, formatDuration, formatNumber, t } from "../../text";
import { type ComparedRow, ComparedTable } from "../../ui/ComparedTable";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { dipRows } from "../shared/dipRows";
import type { RecordOf } from "../kindViews";
import { ClusterCautions } from "./ClusterCautions";
import { TrayMaps } from "./ClusterAnswerCards";
import { FunnelCard } from "./FunnelCard";
import { meltedLadder, plannedLadder } from "../shared/burstLadderData";
import { Card } from "../../ui/Card";

/** Clusters: planned beside happened, the melt, and the tray. */
function Happened({ record: { plan, run } }: { record: RecordOf<"cluster"> }) {
  if (!run.melt) return null;
  const ladder = meltedLadder(plan, run.melt, null);
  return (
    <>
      <ClusterCompared plan={plan} run={run} />
      <Card title={t("desk.melting")}>
        <p class="quiet">{t("desk.ladder_happened")}</p>
        <BurstLadder ladder={ladder.rungs.length ? ladder : plannedLadder(plan.reply)} place="desk" />
      </Card>
      <Card title={t("desk.cluster_map")}>
        <TrayMaps request={plan.request} reply={plan.reply} />
      </Card>
    </>
  );
}

/** A record of clusters, and what they teach of the funnel. */
export function ClusterCards({ record }: { record: RecordOf<"cluster"> }) {
  return (
    <>
      <Happened record={record} />
      <FunnelCard record={record} />
    </>
  );
}

/** The same for the folder. */
export function ClusterHalves({ record }: { record: RecordOf<"cluster"> }) {
  return (
    <div class="halves">
      <Happened record={record} />
      <ClusterCautions />
    </div>
  );
}

function ClusterCompared({ plan, run }: { plan: ClusterPlan; run: Run }) {
  const planned = plan.reply.clusters;
  return (
    <Card title={t("desk.planned_happened")}>
      {run.cluster && <ComparedTable rows={rows(plan, run, run.cluster)} />}
      {run.pieces === null ? (
        <p class="answer">{t("desk.not_counted_yet")}</p>
      ) : (
        <p class="answer">{t("desk.clusters_good", { n: run.pieces, percent: formatNumber((100 * run.pieces) / planned, 0) })}</p>
      )}
    </Card>
  );
}

function rows(plan: ClusterPlan, run: Run, { fills, laid }: ClusterState): ComparedRow[] {
  const { reply } = plan;
  const loose_kg = run.out.filter((one) => one.what === "loose").reduce((sum, one) => sum + one.kg, 0);
  const again = laid.filter((one) => one.second_ms !== null).length;
  const [from, to] = [laid[0], laid.find((one) => one.freed_ms !== null)];
  const took_s = from && to?.freed_ms ? (to.freed_ms - (from.second_ms ?? from.laid_ms)) / 1000 : null;
  return [
    { what: t("desk.row_caramel"), planned: format("caramel_kg", reply.caramel_kg), happened: format("caramel_kg", run.weighed_kg) },
    { what: t("desk.row_lot"), planned: "", happened: run.lot ?? "–" },
    ...(run.cluster?.under_lots ?? []).map(({ material, lot }) => ({
      what: material ? t("desk.row_lot_of", { materials: [material] }) : t("desk.row_under_lot"),
      planned: "",
      happened: lot ?? "–",
    })),
    { what: t("desk.row_trays"), planned: String(reply.trays), happened: String(laid.length) },
    { what: t("desk.row_fills"), planned: String(reply.fills), happened: String(fills) },
    ...(reply.second ? [{ what: t("desk.row_second"), planned: String(reply.trays), happened: String(again) }] : []),
    { what: t("desk.row_freed"), planned: formatDuration(reply.free.from_s), happened: took_s === null ? "–" : formatDuration(took_s) },
    { what: t("desk.row_loose"), planned: "", happened: loose_kg > 0 ? format("kg", loose_kg) : "–" },
    ...dipRows(plan, run),
    { what: t("desk.row_clusters"), planned: String(reply.clusters), happened: format("pieces", run.pieces) },
  ];
}
