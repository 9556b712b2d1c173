import type { ComponentChildren } from "preact";

import type { Input, SlabPlanReply } from "../../documents";
import { now, type SlabAnswer } from "../../state";
import { format, formatTime, t } from "../../text";
import { BasisMark } from "../../ui/BasisMark";
import { BasisTable } from "../../ui/BasisTable";
import { BurstLadder } from "../../ui/pictures/BurstLadder";
import { CoolingCurve } from "../../ui/pictures/CoolingCurve";
import { JacketLine, type JacketTimes } from "../../ui/pictures/JacketLine";
import { CutList, SlabMap } from "../../ui/pictures/SlabMap";
import { plannedCooling, plannedJacket, plannedLadder, slabOf } from "../pictures";

/** Set up, weigh in, pour and level: minutes of hands besides the melt (common practice, no published source). */
const HANDS_MS = 12 * 60_000;

interface Props {
  answer: SlabAnswer;
  /** Stands between the sentences and the pictures. */
  children: ComponentChildren;
}

/** The plan as sentences, then as pictures; every number with what it rests on. */
export function PlanAnswer({ answer, children }: Props) {
  const { reply } = answer;
  return (
    <>
      <Sentences reply={reply} />
      {children}
      <Cutting reply={reply} />
      <Melting reply={reply} />
      <CoolingCard reply={reply} />
      <section class="card">
        <h2>{t("desk.rests_on")}</h2>
        <BasisTable inputs={reply.inputs} />
        <p class="quiet">{t(`desk.computed_by_${answer.by}`)}</p>
      </section>
    </>
  );
}

/** Seconds from the first heat to pouring, as planned. */
function meltS({ melt, jacket }: SlabPlanReply): number {
  return jacket?.seconds_s ?? melt?.total_s ?? 0;
}

/** When the heat begins: whole minutes, so that the sentence does not flicker while the clock ticks. */
function heatedMs(): number {
  return Math.round((now.value + HANDS_MS) / 60_000) * 60_000;
}

/** Whole minutes, so that the sentence does not flicker while the clock ticks. */
function pouredMs(reply: SlabPlanReply): number {
  return Math.round((now.value + HANDS_MS + meltS(reply) * 1000) / 60_000) * 60_000;
}

function Sentences({ reply }: { reply: SlabPlanReply }) {
  const { pour, cut, cool } = reply;
  const poured_ms = pouredMs(reply);
  const time = (after_s: number) => formatTime(poured_ms + after_s * 1000);
  return (
    <section class="card sentences">
      <h2>{t("desk.the_plan")}</h2>
      <p class="answer">{t("desk.use_bars", { bars: stack(pour.bars), length_m: pour.length_m, width_m: pour.width_m })}</p>
      <p class="answer">{t("desk.weigh_in", { caramel_kg: reply.caramel_kg })}</p>
      {reply.blocks > 0 && <p>{t("desk.open_blocks", { n: reply.blocks, leftover_kg: reply.leftover_kg })}</p>}
      <Marks inputs={reply.inputs} fields={["residue"]} />
      <p class="answer">
        {t("desk.centres", { n: cut.pieces, piece_kg: cut.piece_kg, columns: cut.columns, rows: cut.rows, trim_kg: cut.trim_kg })}
      </p>
      <Marks inputs={reply.inputs} fields={["trim_m"]} />
      <MeltSentence reply={reply} />
      <p class="answer">{t("desk.ready", { ready: time(cool.ready_s), low: time(cool.ready_low_s), high: time(cool.ready_high_s) })}</p>
      <p class="quiet">{t("desk.if_started_now", { poured: formatTime(poured_ms) })}</p>
      <Marks inputs={reply.inputs} fields={["room_c", "loss_factor"]} />
      <Warnings reply={reply} />
    </section>
  );
}

/** How long the melt takes: bursts in an oven, hours in a water jacket. */
function MeltSentence({ reply: { melt, jacket, inputs } }: { reply: SlabPlanReply }) {
  const time = (after_s: number) => formatTime(heatedMs() + after_s * 1000);
  return (
    <>
      {melt && <p class="answer">{t("desk.bursts", { n: melt.bursts.length, total_s: melt.total_s })}</p>}
      {jacket && (
        <p class="answer">
          {t("desk.jacket_soft", { ready: time(jacket.seconds_s), low: time(jacket.low_s), high: time(jacket.high_s) })}
        </p>
      )}
      <Marks inputs={inputs} fields={["oven.rated_w", "jacket.water_c"]} />
    </>
  );
}

/** The marks for the inputs that matter most to a card, in the order named. */
function Marks({ inputs, fields }: { inputs: Input[]; fields: string[] }) {
  const found = fields.map((field) => inputs.find((one) => one.field === field)).filter((one) => one !== undefined);
  return (
    <p class="marks">
      {found.map((input) => (
        <BasisMark key={input.field} input={input} />
      ))}
    </p>
  );
}

function Cutting({ reply }: { reply: SlabPlanReply }) {
  return (
    <section class="card">
      <h2>{t("desk.slab_and_frame")}</h2>
      <SlabMap slab={slabOf(reply)} place="desk" />
      <CutList slab={slabOf(reply)} />
      <OtherFrames reply={reply} />
      <Marks inputs={reply.inputs} fields={["material", "bars_m", "piece_length_m", "trim_m", "kerf_m"]} />
    </section>
  );
}

function stack(bars: number[]): string {
  return bars.length ? bars.map((bar) => format("bar_m", bar)).join(" + ") : "–";
}

function Warnings({ reply }: { reply: SlabPlanReply }) {
  return (
    <>
      {reply.warnings.map((one) => (
        <p key={one.code} class="minding">
          {t(`warning.${one.code}`, one.values as Record<string, unknown>)}
        </p>
      ))}
    </>
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
  const jacket = plannedJacket(reply, heatedMs());
  if (jacket) return <Jacketed jacket={jacket} inputs={reply.inputs} />;
  return (
    <section class="card">
      <h2>{t("desk.melting")}</h2>
      <p class="quiet">{t("desk.bursts_note")}</p>
      <BurstLadder ladder={plannedLadder(reply)} place="desk" />
      <Marks inputs={reply.inputs} fields={["oven.rated_w", "oven.power_w", "oven.unevenness", "vessel.mass_kg", "start_c", "windows.low_c", "windows.limit_c"]} />
    </section>
  );
}

function Jacketed({ jacket, inputs }: { jacket: JacketTimes; inputs: Input[] }) {
  const { seconds_s, low_s, high_s } = jacket;
  return (
    <section class="card">
      <h2>{t("desk.melting")}</h2>
      <p class="quiet">
        {t("desk.jacket_takes", { seconds_s, low_s, high_s })} {t("desk.jacket_note")}
      </p>
      <JacketLine jacket={jacket} place="desk" />
      <Marks inputs={inputs} fields={["jacket.water_c", "jacket.thickness_m", "jacket.chopped_m", "jacket.wall_w_m2k", "start_c", "windows.low_c", "windows.limit_c"]} />
    </section>
  );
}

function CoolingCard({ reply }: { reply: SlabPlanReply }) {
  return (
    <section class="card">
      <h2>{t("desk.cooling")}</h2>
      <CoolingCurve cooling={plannedCooling(reply, pouredMs(reply))} place="desk" />
      <p class="legend">
        <span class="legend-core">{t("desk.curve_core")}</span>
        <span class="legend-surface">{t("desk.curve_surface")}</span>
      </p>
      <Marks inputs={reply.inputs} fields={["base", "contact_m2k_w", "room_c", "top", "loss_factor"]} />
    </section>
  );
}
