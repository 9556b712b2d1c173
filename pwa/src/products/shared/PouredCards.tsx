/** What plan and record of everything poured between bars show alike. */
import type { BenchEvent, SlabPlanReply, SlabRun } from "../../documents";
import { format, formatTime, t } from "../../text";
import { Card } from "../../ui/Card";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { cooledSlab, plannedCooling } from "./cooling";
import { plannedLadder } from "./burstLadderData";
import { BasisMarks } from "./Sentences";

export type PouredReply = Pick<SlabPlanReply, "caramel_kg" | "blocks" | "leftover_kg" | "pour" | "cool" | "inputs" | "melt_request" | "melt">;

interface PouredRecord {
  plan: { reply: Pick<SlabPlanReply, "cool"> };
  events: BenchEvent[];
  run: Pick<SlabRun, "cool" | "done">;
}

/** The bars, the caramel to weigh in and the blocks to open. */
export function PouredSentences({ reply }: { reply: PouredReply }) {
  return (
    <>
      <p class="answer">{frameWords(reply.pour)}</p>
      <p class="answer">{t("desk.weigh_in", { caramel_kg: reply.caramel_kg })}</p>
      {reply.blocks > 0 && <p>{t("desk.open_blocks", { n: reply.blocks, leftover_kg: reply.leftover_kg })}</p>}
      <BasisMarks inputs={reply.inputs} fields={["residue"]} />
    </>
  );
}

/** Which bars close the frame; without any the height has to be kept by eye. */
function frameWords({ bars, slab_height_m, length_m, width_m }: SlabPlanReply["pour"]): string {
  if (bars.length === 0) return t("desk.without_bars", { slab_height_m, length_m, width_m });
  return t("desk.use_bars", { bars: stack(bars), length_m, width_m });
}

function stack(bars: number[]): string {
  return bars.length ? bars.map((bar) => format("bar_m", bar)).join(" + ") : "–";
}

/** When it has cooled, if it were begun now. */
export function ReadySentences({ reply: { cool, inputs }, poured_ms }: { reply: PouredReply; poured_ms: number }) {
  const time = (after_s: number) => formatTime(poured_ms + after_s * 1000);
  return (
    <>
      <p class="answer">{t("desk.ready", { ready: time(cool.ready_s), low: time(cool.ready_low_s), high: time(cool.ready_high_s) })}</p>
      <p class="quiet">{t("desk.if_started_now", { poured: formatTime(poured_ms) })}</p>
      <BasisMarks inputs={inputs} fields={["room_c", "loss_factor", "target_c"]} />
    </>
  );
}

/** The bursts in an oven as planned. */
export function BurstsCard({ reply }: { reply: PouredReply }) {
  return (
    <Card title={t("desk.melting")}>
      <p class="quiet">{t("desk.bursts_note")}</p>
      <BurstLadder ladder={plannedLadder(reply)} place="desk" />
      <BasisMarks inputs={reply.inputs} fields={["oven.rated_w", "oven.power_w", "oven.unevenness", "vessel.mass_kg", "start_c", "windows.low_c", "windows.limit_c"]} />
    </Card>
  );
}

/** The cooling as planned. */
export function CoolingCard({ reply, poured_ms }: { reply: PouredReply; poured_ms: number }) {
  return (
    <Card title={t("desk.cooling")}>
      <CoolingCurve cooling={plannedCooling(reply, poured_ms)} place="desk" />
      <p class="legend">
        <span class="legend-core">{t("desk.curve_core")}</span>
        <span class="legend-surface">{t("desk.curve_surface")}</span>
      </p>
      <BasisMarks inputs={reply.inputs} fields={["base", "contact_m2k_w", "room_c", "top", "loss_factor", "target_c"]} />
    </Card>
  );
}

/** The cooling as it went, or as planned where nothing was poured. */
export function CooledPicture({ record: { plan, events, run } }: { record: PouredRecord }) {
  return (
    <>
      {run.done["melt"] === undefined && <p class="quiet">{t("desk.never_poured")}</p>}
      <CoolingCurve cooling={cooledSlab(plan, events, run, null)} place="desk" />
    </>
  );
}
