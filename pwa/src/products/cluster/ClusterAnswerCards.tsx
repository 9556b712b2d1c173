import { Fragment } from "preact";

import type { ClusterPlan, ClusterPlanReply, PlanLabels, ProductRow } from "../../documents";
import type { PlanAnswer, PlanParts } from "../../state";
import { formatDuration, formatRange, t } from "../../text";
import { BasisTable } from "../../ui/BasisTable";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { TrayMap } from "../../ui/pictures/TrayMap";
import { plannedLadder } from "../shared/burstLadderData";
import type { ClusterForm } from "./clusterForm";
import { trayOf } from "./tray";
import { BatchSentences, SizeSentences } from "../shared/BatchSentences";
import { DipSentences } from "../shared/DipSentences";
import { OpenBatch } from "../shared/OpenBatch";
import { asFirst } from "../shared/series";
import { uniqueName } from "../shared/uniqueName";
import { InWords, PlanWarnings, RoomSentences, BasisMarks } from "../shared/Sentences";
import { Card } from "../../ui/Card";
import { PlanCard } from "../../ui/PlanCard";
import { clusterPlanRows, underWords } from "./clusterPlanRows";

interface Props {
  answer: PlanAnswer<"cluster.plan">;
  form: ClusterForm;
  parts: PlanParts;
  product: ProductRow;
  labels: PlanLabels;
  busy: boolean;
  /** Shows the plan as a printed page. */
  onPage: () => void;
}

/** The clusters in words and pictures, and what they rest on. */
export function ClusterAnswerCards({ answer: { request, reply }, form, parts, product, labels, busy, onPage }: Props) {
  const head = { ...asFirst(uniqueName(product.name), reply), ...parts, lot: form.lot.trim() || null, ...labels };
  const plan: ClusterPlan = { kind: "cluster", ...head, finish: product.finish === "dipped" ? "dipped" : "plain", request, reply };
  return (
    <>
      <div class="plan-first">
        <PlanCard rows={clusterPlanRows(reply)} inputs={reply.inputs}>
          <PlanWarnings reply={reply} />
          <InWords>
            <ClusterSentences reply={reply} />
          </InWords>
        </PlanCard>
        <OpenBatch plan={plan} busy={busy} product={product} dip={reply.dip} onPage={onPage} />
      </div>
      <div class="plan-rest">
        <Card title={t("desk.cluster_map")}>
          <TrayMaps request={request} reply={reply} />
          <BasisMarks inputs={reply.inputs} fields={["tray.length_m", "tray.rim_m", "spread_m", "gap_m"]} />
        </Card>
        <Card title={t("desk.melting")}>
          <p class="quiet">{t("desk.bursts_note")}</p>
          <BurstLadder ladder={plannedLadder(reply)} place="desk" />
          <BasisMarks inputs={reply.inputs} fields={["oven.rated_w", "oven.power_w", "vessel.mass_kg", "start_c", "window_low_c"]} />
        </Card>
        <BasisTable inputs={reply.inputs} />
      </div>
    </>
  );
}

/** The plan in words, each with the marks of what it rests on. */
export function ClusterSentences({ reply }: { reply: ClusterPlanReply }) {
  const { inputs, second, free } = reply;
  return (
    <section class="sentences">
      <BatchSentences reply={reply} />
      <p class="answer">{t(reply.by_tray?.length ? "desk.cluster_answer_sizes" : "desk.cluster_answer", { ...reply, n: reply.clusters })}</p>
      <p class="answer">{t("desk.weigh_in", { caramel_kg: reply.caramel_kg })}</p>
      {reply.blocks > 0 && <p>{t("desk.open_blocks", { n: reply.blocks, leftover_kg: reply.leftover_kg })}</p>}
      <BasisMarks inputs={inputs} fields={["residue"]} />
      <SizeSentences reply={reply} pieces={reply.clusters} />
      {reply.under.length > 0 && <p class="answer">{t("desk.cluster_under", { under: reply.under.map(underWords).join(", ") })}</p>}
      <p class="answer">{t("desk.bursts", { n: reply.melt.bursts.length, total_s: reply.melt.total_s })}</p>
      <p class="answer">{t("desk.cluster_fills", { n: reply.fills, fill_kg: reply.fill_kg, lasts: fillDuration(reply), deposits: reply.deposits_per_fill })}</p>
      {reply.reheats > 0 && <p>{t("desk.cluster_reheats", { n: reply.reheats })}</p>}
      {reply.bench_s !== undefined && <p>{t("desk.cluster_bench", { bench_s: reply.bench_s })}</p>}
      <BasisMarks inputs={inputs} fields={["funnel.volume_m3", "funnel.h_w_m2k", "deposits_per_min", "window_low_c"]} />
      {second && <p class="answer">{t("desk.cluster_second", { from_s: second.from_s, to_s: second.to_s })}</p>}
      <p class="answer">{t("desk.cluster_free", { from_s: free.from_s, to_s: free.to_s })}</p>
      <BasisMarks inputs={inputs} fields={["room_c", "deposit_kg", "rows[0].deposit_kg", "spread_m"]} />
      {reply.dip && <DipSentences dip={reply.dip} inputs={inputs} />}
      <RoomSentences air={reply.room} inputs={inputs} />
    </section>
  );
}

/** How long a full funnel stays in its window: what its clock at the bench is sure of, to what is likely. */
function fillDuration({ safe_s, fill_s }: ClusterPlanReply): string {
  return safe_s < fill_s ? formatRange("fill_s", safe_s, fill_s) : formatDuration(fill_s);
}

/** The tray, or every tray where they differ, in words and as a picture; `most` pictures. */
export function TrayMaps({ most, ...plan }: Pick<ClusterPlan, "request" | "reply"> & { most?: number }) {
  const { by_tray = [], second } = plan.reply;
  let to = 0;
  return (
    <>
      {by_tray.map(({ trays, sizes }, index) => (
        <Fragment key={index}>
          <p>{t("desk.cluster_by_tray", { n: trays, from: to + 1, to: (to += trays), sizes })}</p>
          {index < (most ?? index + 1) && <TrayMap tray={trayOf(plan, sizes)} place="desk" />}
        </Fragment>
      ))}
      {by_tray.length === 0 && most !== 0 && <TrayMap tray={trayOf(plan)} place="desk" />}
      <p class="quiet">{t(second ? "desk.cluster_map_note_second" : "desk.cluster_map_note")}</p>
    </>
  );
}
