/** The lines of the morning card that several kinds share. */
import type { SlabPlanReply } from "../../documents";
import { format, formatDuration, formatTime, t } from "../../text";
import type { PlanRow } from "../../ui/PlanCard";

type Caramel = Pick<SlabPlanReply, "blocks" | "leftover_kg" | "caramel_kg"> & Partial<Pick<SlabPlanReply, "together" | "remelt">>;

/** Of how many batches this is the first, what to open and to weigh out for it. */
export function caramelRows({ blocks, leftover_kg, caramel_kg, together, remelt }: Caramel): PlanRow[] {
  const several = together && together.batches > 1;
  const first: PlanRow[] = several ? [{ what: "plan.batches", figure: t("plan.first_of", { n: together.batches }), note: t("plan.batches_all", { ...together }) }] : [];
  return [...first, ...weighRows(blocks, leftover_kg, caramel_kg, remelt)];
}

function weighRows(blocks: number, leftover_kg: number, caramel_kg: number, remelt?: SlabPlanReply["remelt"]): PlanRow[] {
  const old = remelt && remelt.old_kg > 0 ? t("plan.old_caramel", { ...remelt }) : undefined;
  const weigh = { what: "plan.weigh", figure: format("caramel_kg", caramel_kg), note: old, rests_on: ["residue", "material"] };
  if (blocks === 0) return [weigh];
  const note = leftover_kg > 0.001 ? t("plan.left_over", { leftover_kg }) : undefined;
  return [{ what: "plan.open", figure: t("plan.blocks", { n: blocks }), note }, weigh];
}

/** How many bursts, and how long they take. */
export function burstsRow(melt: NonNullable<SlabPlanReply["melt"]>): PlanRow {
  const rests_on = ["oven.rated_w", "oven.power_w", "vessel.mass_kg", "start_c", "windows.low_c", "window_low_c"];
  return { what: "plan.melt", figure: t("plan.bursts", { n: melt.bursts.length }), note: t("plan.with_stirring", { total_s: melt.total_s }), rests_on };
}

/** From when to when something is likely, around its likeliest time (ms). */
export function timeRow(what: string, ready_ms: number, low_ms: number, high_ms: number, rests_on: string[]): PlanRow {
  return { what, figure: formatTime(ready_ms), note: t("plan.between", { low: formatTime(low_ms), high: formatTime(high_ms) }), rests_on };
}

/** Chocolate and salt of what is dipped. */
export function dipRows(dip: SlabPlanReply["dip"] | undefined): PlanRow[] {
  if (!dip) return [];
  const warmed = dip.rewarms > 0 ? t("plan.warm_bowl", { n: dip.rewarms, dip_all: formatDuration(dip.dip_all_s) }) : undefined;
  const rests_on = ["dip.pickup", "coating.thickness_m", "dip.thickness_m.side", "dip.bowl_reserve_kg", "dip.dip_s"];
  const rows: PlanRow[] = [{ what: "plan.chocolate", figure: format("total_kg", dip.total_kg), note: warmed, rests_on }];
  if (dip.salt_kg !== null) rows.push({ what: "plan.salt", figure: format("salt_kg", dip.salt_kg), note: t("desk.dip_every", { n: dip.every }), rests_on: ["dip.set_s", "dip.dip_s"] });
  return rows;
}
