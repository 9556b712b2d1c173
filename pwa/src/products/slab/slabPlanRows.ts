import type { SlabPlanReply } from "../../documents";
import { format, formatSides, t } from "../../text";
import type { PlanRow } from "../../ui/PlanCard";
import { burstsRow, caramelRows, dipRows, timeRow } from "../shared/planRows";
import { meltedMs } from "../shared/Sentences";
import { pouredMs } from "./SlabSentences";

/** The morning card of a slab: open, weigh, set the frame, melt, cut, dip, box. */
export function slabPlanRows(reply: SlabPlanReply, per_box: number | null): PlanRow[] {
  const { pour, cool, melt, jacket } = reply;
  const at = (seconds_s: number) => meltedMs() + seconds_s * 1000;
  const cooled = (seconds_s: number) => pouredMs(reply) + seconds_s * 1000;
  return [
    ...caramelRows(reply),
    frameRow(pour),
    ...(melt ? [burstsRow(melt)] : []),
    ...(jacket ? [timeRow("plan.soft", at(jacket.seconds_s), at(jacket.low_s), at(jacket.high_s), ["jacket.water_c", "start_c"])] : []),
    timeRow("plan.ready", cooled(cool.ready_s), cooled(cool.ready_low_s), cooled(cool.ready_high_s), ["room_c", "base", "loss_factor", "target_c"]),
    cutRow(reply),
    ...boxRow(reply.good, per_box),
    ...dipRows(reply.dip),
  ];
}

function frameRow({ bars, slab_height_m, length_m, width_m }: SlabPlanReply["pour"]): PlanRow {
  const stack = bars.map((bar) => format("bar_m", bar)).join(" + ");
  return { what: "plan.frame", figure: formatSides(length_m, width_m), note: stack ? t("plan.between_bars", { bars: stack }) : t("plan.no_bars", { slab_height_m }), rests_on: ["bars[0].height_m", "bars[0].length_m", "material"] };
}

function cutRow({ cut, good, trim_kg }: SlabPlanReply): PlanRow {
  const { columns, rows, piece_kg } = cut;
  const note = [t("plan.rows_of", { columns, rows, piece_kg, trim_kg }), good < cut.pieces ? t("desk.good_pieces", { n: good }) : ""].filter(Boolean).join(" · ");
  return { what: "plan.cut", figure: t("plan.pieces", { n: cut.pieces }), note, rests_on: ["yield_share", "trim_share", "piece_length_m", "trim_m", "kerf_m"] };
}

function boxRow(pieces: number, per_box: number | null): PlanRow[] {
  if (!per_box || pieces < per_box) return [];
  const over = pieces % per_box;
  return [{ what: "plan.boxes", figure: t("plan.boxes_of", { n: Math.floor(pieces / per_box), per_box }), note: over ? t("plan.over", { n: over }) : undefined }];
}
