import { now, type PlanAnswer } from "../../state";
import { formatDate, t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { ClusterCautions } from "./ClusterCautions";
import { ClusterSentences, TrayMaps } from "./ClusterAnswerCards";
import { PlanWarnings } from "../shared/Sentences";
import { plannedLadder } from "../shared/burstLadderData";
import { BatchPage, BasisList } from "../shared/paper";
import { Section } from "../../ui/Card";

export interface ClusterPage {
  answer: PlanAnswer<"cluster.plan">;
  name: string;
  lot: string;
  /** By the labels in the shop; what lies under the caramel is in the answer. */
  contains: string[];
  labels_known: boolean;
}

/** The plan of clusters for the wall: the sentences, the tray, the melt, what the figures rest on. */
export function ClusterPaper({ answer, name, lot, contains, labels_known, onClose }: ClusterPage & { onClose: () => void }) {
  const { reply } = answer;
  const allergens = [...new Set([...contains, ...reply.under.flatMap(({ allergen }) => allergen ?? [])])];
  return (
    <BatchPage title={name} lines={[t("paper.plan_of", { day: formatDate(now.value) }), lot && t("paper.lot", { lot })]} onClose={onClose}>
      <div class="halves">
        <ClusterSentences reply={reply} />
        <PlanWarnings reply={reply} />
        <Section title={t("desk.cluster_map")}>
          <TrayMaps {...answer} most={1} />
        </Section>
      </div>
      <div class="halves">
        <Section title={t("desk.melting")}>
          <BurstLadder ladder={plannedLadder(reply)} place="desk" />
        </Section>
        <section>
          <p class="answer">{allergens.length > 0 ? t(labels_known ? "caution.contains" : "day.holds_some", { allergens }) : t("day.holds_unknown")}</p>
          <ClusterCautions />
        </section>
      </div>
      <BasisList inputs={reply.inputs} />
    </BatchPage>
  );
}
