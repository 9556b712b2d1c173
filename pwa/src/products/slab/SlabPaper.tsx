import { now, type PlanAnswer } from "../../state";
import { formatDate, t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine } from "../../ui/pictures/JacketLine";
import { CutList, SlabMap } from "../../ui/pictures/SlabMap";
import { plannedLadder } from "../shared/burstLadderData";
import { SlabCautions } from "./SlabCautions";
import { plannedCooling } from "../shared/cooling";
import { plannedJacket, slabOf } from "./slabPictures";
import { meltedMs, PlanWarnings } from "../shared/Sentences";
import { Sentences } from "./SlabSentences";
import { BatchPage, BasisList } from "../shared/paper";
import { Section } from "../../ui/Card";

export interface SlabPage {
  answer: PlanAnswer<"slab.plan">;
  name: string;
  lot: string;
}

/** The plan for the wall: the sentences, the pictures, what the figures rest on. */
export function SlabPaper({ answer: { reply }, name, lot, onClose }: SlabPage & { onClose: () => void }) {
  const slab = slabOf(reply);
  const jacket = plannedJacket(reply, meltedMs());
  return (
    <BatchPage title={name} lines={[t("paper.plan_of", { day: formatDate(now.value) }), lot && t("paper.lot", { lot })]} onClose={onClose}>
      <div class="halves">
        <div>
          <Sentences reply={reply} />
          <PlanWarnings reply={reply} />
          <CutList slab={slab} />
        </div>
        <Section title={t("desk.slab_and_frame")}>
          <SlabMap slab={slab} place="desk" />
        </Section>
      </div>
      <div class="halves">
        <Section title={t("desk.melting")}>
          {jacket ? <JacketLine jacket={jacket} place="desk" /> : <BurstLadder ladder={plannedLadder(reply)} place="desk" />}
        </Section>
        <Section title={t("desk.cooling")}>
          <CoolingCurve cooling={plannedCooling(reply, null)} place="desk" />
        </Section>
      </div>
      <SlabCautions jacket={Boolean(reply.jacket)} />
      <BasisList inputs={reply.inputs} />
    </BatchPage>
  );
}
