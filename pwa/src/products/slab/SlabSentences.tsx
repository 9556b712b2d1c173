import type { SlabPlanReply } from "../../documents";
import { format, formatTime, t } from "../../text";
import { DipSentences } from "../shared/DipSentences";
import { RoomSentences, meltedMs, BasisMarks, Warnings } from "../shared/Sentences";

export function pouredMs({ melt, jacket }: SlabPlanReply): number {
  return meltedMs(jacket?.seconds_s ?? melt?.total_s);
}

/** The plan in words, each with the marks of what it rests on. */
export function Sentences({ reply }: { reply: SlabPlanReply }) {
  const { pour, cut, cool } = reply;
  const poured_ms = pouredMs(reply);
  const time = (after_s: number) => formatTime(poured_ms + after_s * 1000);
  return (
    <section class="card sentences">
      <h2>{t("desk.the_plan")}</h2>
      <p class="answer">{frameWords(pour)}</p>
      <p class="answer">{t("desk.weigh_in", { caramel_kg: reply.caramel_kg })}</p>
      {reply.blocks > 0 && <p>{t("desk.open_blocks", { n: reply.blocks, leftover_kg: reply.leftover_kg })}</p>}
      <BasisMarks inputs={reply.inputs} fields={["residue"]} />
      <p class="answer">
        {t("desk.centres", { n: cut.pieces, piece_kg: cut.piece_kg, columns: cut.columns, rows: cut.rows, trim_kg: cut.trim_kg })}
      </p>
      <BasisMarks inputs={reply.inputs} fields={["trim_m"]} />
      <MeltSentence reply={reply} />
      <p class="answer">{t("desk.ready", { ready: time(cool.ready_s), low: time(cool.ready_low_s), high: time(cool.ready_high_s) })}</p>
      <p class="quiet">{t("desk.if_started_now", { poured: formatTime(poured_ms) })}</p>
      <BasisMarks inputs={reply.inputs} fields={["room_c", "loss_factor"]} />
      {reply.dip && <DipSentences dip={reply.dip} inputs={reply.inputs} />}
      <RoomSentences air={reply.room} inputs={reply.inputs} />
      <Warnings warnings={reply.warnings} />
    </section>
  );
}

/** Which bars close the frame; without any the height has to be kept by eye. */
function frameWords({ bars, slab_height_m, length_m, width_m }: SlabPlanReply["pour"]): string {
  if (bars.length === 0) return t("desk.without_bars", { slab_height_m, length_m, width_m });
  return t("desk.use_bars", { bars: stack(bars), length_m, width_m });
}

/** How long the melt takes: bursts in an oven, hours in a water jacket. */
function MeltSentence({ reply: { melt, jacket, inputs } }: { reply: SlabPlanReply }) {
  const time = (after_s: number) => formatTime(meltedMs() + after_s * 1000);
  return (
    <>
      {melt && <p class="answer">{t("desk.bursts", { n: melt.bursts.length, total_s: melt.total_s })}</p>}
      {jacket && (
        <p class="answer">
          {t("desk.jacket_soft", { ready: time(jacket.seconds_s), low: time(jacket.low_s), high: time(jacket.high_s) })}
        </p>
      )}
      {/* What was measured of an oven stands for its plate. */}
      <BasisMarks inputs={inputs} fields={[inputs.some((one) => one.field === "oven.power_w") ? "oven.power_w" : "oven.rated_w", "jacket.water_c"]} />
    </>
  );
}

function stack(bars: number[]): string {
  return bars.length ? bars.map((bar) => format("bar_m", bar)).join(" + ") : "–";
}
