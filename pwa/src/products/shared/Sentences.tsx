/** The small parts of a plan in words: the marks of what it rests on, the room's air, warnings. */
import type { ComponentChildren } from "preact";

import type { Input, SlabPlanReply } from "../../documents";
import { now } from "../../state";
import { t } from "../../text";
import { BasisMark } from "../../ui/BasisMark";

/** Set up, weigh in, pour and level: minutes of hands besides the melt (common practice, no published source). */
const SETTING_UP_MS = 12 * 60_000;

/** When so many seconds of heat are over: whole minutes, so that no sentence flickers while the clock ticks. */
export function meltedMs(after_s = 0): number {
  return Math.round((now.value + SETTING_UP_MS + after_s * 1000) / 60_000) * 60_000;
}

/** The marks for the inputs that matter most to a card, in the order named. */
export function BasisMarks({ inputs, fields }: { inputs: Input[]; fields: string[] }) {
  const found = fields.map((field) => inputs.find((one) => one.field === field)).filter((one) => one !== undefined);
  const marks = (
    <p class="marks">
      {found.map((input) => (
        <BasisMark key={input.field} input={input} />
      ))}
    </p>
  );
  if (found.length < 3) return marks;
  return (
    <details class="marks-folded">
      <summary>{t("desk.rests_on")}</summary>
      {marks}
    </details>
  );
}

/** The room's dew point; plans of long ago say nothing of its air. */
export function RoomSentences({ air, inputs }: { air: SlabPlanReply["room"] | undefined; inputs: Input[] }) {
  if (!air || air.dew_point_c === null) return null;
  return (
    <>
      <p class="quiet">{t("desk.dew_point", { dew_point_c: air.dew_point_c })}</p>
      <BasisMarks inputs={inputs} fields={["humidity"]} />
    </>
  );
}

/** What to mind of a plan, and of the room's air, and what it could not be held to. */
export function PlanWarnings({ reply: { warnings, room, sizes_unknown = [] } }: { reply: Pick<SlabPlanReply, "warnings"> & Partial<Pick<SlabPlanReply, "room" | "sizes_unknown">> }) {
  return (
    <>
      <Warnings warnings={[...warnings, ...(room?.warnings ?? [])]} />
      {sizes_unknown.map((what) => (
        <p key={what} class="quiet">
          {t(what === "bars" ? "desk.unknown_bars" : "desk.unknown_bowl")}
        </p>
      ))}
    </>
  );
}

/** A plan in whole sentences, folded under its card. */
export function InWords({ children }: { children: ComponentChildren }) {
  return (
    <details class="in-words">
      <summary>{t("plan.in_words")}</summary>
      {children}
    </details>
  );
}

function Warnings({ warnings }: { warnings: SlabPlanReply["warnings"] }) {
  return (
    <>
      {warnings.map((one) => (
        <p key={one.code} class="warning-line">
          {t(`warning.${one.code}`, one.values as Record<string, unknown>)}
        </p>
      ))}
    </>
  );
}
