import type { SlabPlanReply } from "../../documents";
import { formatTime, t } from "../../text";
import { BatchSentences, SizeSentences } from "../shared/BatchSentences";
import { DipSentences } from "../shared/DipSentences";
import { PouredSentences, ReadySentences } from "../shared/PouredCards";
import { RoomSentences, meltedMs, BasisMarks } from "../shared/Sentences";

export function pouredMs({ melt, jacket }: SlabPlanReply): number {
  return meltedMs(jacket?.seconds_s ?? melt?.total_s);
}

/** The plan in words, each with the marks of what it rests on. */
export function Sentences({ reply }: { reply: SlabPlanReply }) {
  const { cut } = reply;
  return (
    <section class="sentences">
      <BatchSentences reply={reply} />
      <PouredSentences reply={reply} />
      <p class="answer">
        {t("desk.centres", { n: cut.pieces, piece_kg: cut.piece_kg, columns: cut.columns, rows: cut.rows, trim_kg: reply.trim_kg ?? cut.trim_kg })}
      </p>
      <BasisMarks inputs={reply.inputs} fields={["trim_share", "trim_m"]} />
      <SizeSentences reply={reply} pieces={cut.pieces} />
      <MeltSentence reply={reply} />
      <ReadySentences reply={reply} poured_ms={pouredMs(reply)} />
      {reply.dip && <DipSentences dip={reply.dip} inputs={reply.inputs} />}
      <RoomSentences air={reply.room} inputs={reply.inputs} />
    </section>
  );
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
