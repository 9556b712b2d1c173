import type { ComponentChildren } from "preact";

import type { Input, SlabPlanReply } from "../../documents";
import type { PlanAnswer } from "../../state";
import { t } from "../../text";
import { BasisTable } from "../../ui/BasisTable";
import { JacketLine, type JacketTimes } from "../../ui/pictures/JacketLine";
import { CutList, SlabMap } from "../../ui/pictures/SlabMap";
import { BurstsCard, CoolingCard } from "../shared/PouredCards";
import { plannedJacket, slabOf } from "./slabPictures";
import { InWords, meltedMs, BasisMarks, PlanWarnings } from "../shared/Sentences";
import { pouredMs, Sentences } from "./SlabSentences";
import { Card } from "../../ui/Card";
import { PlanCard } from "../../ui/PlanCard";
import { slabPlanRows } from "./slabPlanRows";

interface Props {
  answer: PlanAnswer<"slab.plan">;
  /** Centres in a box; null: they are not boxed. */
  per_box: number | null;
  /** Stands between the card and the pictures. */
  children: ComponentChildren;
}

/** The plan as a card for the morning, then as pictures; every number with what it rests on. */
export function SlabAnswerCards({ answer, per_box, children }: Props) {
  const { reply } = answer;
  return (
    <>
      <div class="plan-first">
        <PlanCard rows={slabPlanRows(reply, per_box)} inputs={reply.inputs}>
          <PlanWarnings reply={reply} />
          <InWords>
            <Sentences reply={reply} />
          </InWords>
        </PlanCard>
        {children}
      </div>
      <div class="plan-rest">
        <Cutting reply={reply} />
        <Melting reply={reply} />
        <CoolingCard reply={reply} poured_ms={pouredMs(reply)} />
        <BasisTable inputs={reply.inputs}>
          <p class="quiet">{t(`desk.computed_by_${answer.by}`)}</p>
        </BasisTable>
      </div>
    </>
  );
}

function Cutting({ reply }: { reply: SlabPlanReply }) {
  return (
    <Card title={t("desk.slab_and_frame")}>
      <SlabMap slab={slabOf(reply)} place="desk" />
      <CutList slab={slabOf(reply)} />
      <OtherFrames reply={reply} />
      <BasisMarks inputs={reply.inputs} fields={["material", "bars[0].height_m", "piece_length_m", "trim_m", "kerf_m"]} />
    </Card>
  );
}

function OtherFrames({ reply }: { reply: SlabPlanReply }) {
  if (reply.frames.length === 0) return null;
  return (
    <details>
      <summary>{t("desk.other_frames", { n: Math.min(6, reply.frames.length) })}</summary>
      <ul class="plain">
        {reply.frames.slice(0, 6).map((one) => (
          <li key={`${one.length_m} ${one.width_m}`}>
            {t("desk.other_frame", { length_m: one.length_m, width_m: one.width_m, n: one.pieces })}
          </li>
        ))}
      </ul>
    </details>
  );
}

function Melting({ reply }: { reply: SlabPlanReply }) {
  const jacket = plannedJacket(reply, meltedMs());
  if (jacket) return <Jacketed jacket={jacket} inputs={reply.inputs} />;
  return <BurstsCard reply={reply} />;
}

function Jacketed({ jacket, inputs }: { jacket: JacketTimes; inputs: Input[] }) {
  const { seconds_s, low_s, high_s } = jacket;
  return (
    <Card title={t("desk.melting")}>
      <p class="quiet">
        {t("desk.jacket_takes", { seconds_s, low_s, high_s })} {t("desk.jacket_note")}
      </p>
      <JacketLine jacket={jacket} place="desk" />
      <BasisMarks inputs={inputs} fields={["jacket.water_c", "jacket.thickness_m", "jacket.chopped_m", "jacket.wall_w_m2k", "start_c", "windows.low_c", "windows.limit_c"]} />
    </Card>
  );
}
