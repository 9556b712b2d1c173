import type { ClusterPlanReply } from "../../documents";
import { formatDuration, formatRange, t } from "../../text";
import type { PlanRow } from "../../ui/PlanCard";
import { burstsRow, caramelRows, dipRows } from "../shared/planRows";

/** The morning card of clusters: open, weigh, lay under, melt, fill, how long it takes, lay, free, dip. */
export function clusterPlanRows(reply: ClusterPlanReply): PlanRow[] {
  const { second, free } = reply;
  const range = ({ from_s, to_s }: { from_s: number; to_s: number }) => formatRange("time_s", from_s, to_s);
  return [
    ...caramelRows(reply),
    { what: "plan.trays", figure: t("plan.clusters", { n: reply.clusters }), note: [t("plan.on_trays", { n: reply.trays }), reply.good < reply.clusters ? t("desk.good_pieces", { n: reply.good }) : ""].filter(Boolean).join(" · "), rests_on: ["yield_share", "tray.length_m", "spread_m", "gap_m"] },
    ...(reply.under.length > 0 ? [{ what: "plan.under", figure: reply.under.map(underWords).join(", ") }] : []),
    burstsRow(reply.melt),
    fillsRow(reply),
    { what: "plan.bench", figure: t("plan.up_to", { bench_s: reply.bench_s }), note: t("plan.bench_note"), rests_on: ["deposits_per_min"] },
    ...(second ? [{ what: "plan.second", figure: range(second), rests_on: ["room_c", "deposit_kg", "spread_m"] }] : []),
    { what: "plan.free", figure: range(free), rests_on: ["room_c", "target_c", "deposit_kg", "rows[0].deposit_kg"] },
    ...dipRows(reply.dip),
  ];
}

function fillsRow({ fills, fill_kg, deposits_per_fill, safe_s, fill_s, reheats }: ClusterPlanReply): PlanRow {
  // What its clock at the bench is sure of, to what is likely.
  const lasts = safe_s < fill_s ? formatRange("fill_s", safe_s, fill_s) : formatDuration(fill_s);
  const note = [t("plan.fill_lasts", { fill_kg, deposits: deposits_per_fill, lasts }), reheats > 0 ? t("desk.cluster_reheats", { n: reheats }) : ""].filter(Boolean).join(" · ");
  return { what: "plan.fills", figure: t("plan.fills_n", { n: fills }), note, rests_on: ["funnel.volume_m3", "funnel.h_w_m2k", "deposits_per_min"] };
}

/** What goes under, in words. */
export function underWords({ material, kg, count }: ClusterPlanReply["under"][number]): string {
  const word = typeof material === "string" ? t(`word.${material}`) : t("basis.own");
  return t(count === null ? "desk.cluster_under_bed" : "desk.cluster_under_counted", { kg, word, n: count });
}
