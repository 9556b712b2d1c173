import type { Shop } from "../../documents";
import { type ClusterAnswer, now } from "../../state";
import { formatDate, t } from "../../text";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { TrayMap } from "../../ui/pictures/TrayMap";
import { ClusterSentences } from "../plan/ClusterAnswer";
import type { ClusterForm } from "../plan/clusterForm";
import { caramelOf } from "../plan/form";
import { plannedLadder, trayOf } from "../pictures";
import { BatchPage, ClusterCautions, Rests } from "./parts";

export interface ClusterPage {
  answer: ClusterAnswer;
  name: string;
  lot: string;
  /** By the labels in the shop and what lies under the caramel. */
  contains: string[];
}

/** Pieces that are no nuts. */
const ALLERGEN_OF: Record<string, string> = { pretzel: "gluten", peanut: "peanuts" };

/** The allergens of clusters: on the labels of caramel and chocolate, and in what lies under. */
export function allergensOf(shop: Shop, form: ClusterForm): string[] {
  const product = shop.products.find((one) => one.id === form.product_id);
  const chocolate = product?.finish === "dipped" ? shop.chocolates.find((one) => one.id === product.chocolate_id) : undefined;
  const pieces = [product?.cluster.under, product?.cluster.also].filter((one) => one != null);
  const found = [caramelOf(product, shop)?.contains ?? [], chocolate?.contains ?? [], pieces.map((one) => ALLERGEN_OF[one] ?? "nuts")];
  return [...new Set(found.flat())];
}

/** The plan of clusters for the wall: the sentences, the tray, the melt, what the figures rest on. */
export function ClusterPaper({ answer, name, lot, contains, onClose }: ClusterPage & { onClose: () => void }) {
  const { reply } = answer;
  return (
    <BatchPage title={name} lines={[t("paper.plan_of", { day: formatDate(now.value) }), lot && t("paper.lot", { lot })]} onClose={onClose}>
      <div class="halves">
        <ClusterSentences reply={reply} />
        <section>
          <h2>{t("desk.cluster_map")}</h2>
          <TrayMap tray={trayOf(answer)} place="desk" />
          <p class="quiet">{t(reply.second ? "desk.cluster_map_note_second" : "desk.cluster_map_note")}</p>
        </section>
      </div>
      <div class="halves">
        <section>
          <h2>{t("desk.melting")}</h2>
          <BurstLadder ladder={plannedLadder(reply)} place="desk" />
        </section>
        <section>
          {contains.length > 0 && <p class="answer">{t("paper.contains", { allergens: contains.map((one) => t(`allergen.${one}`)).join(", ") })}</p>}
          <ClusterCautions />
        </section>
      </div>
      <Rests inputs={reply.inputs} />
    </BatchPage>
  );
}
