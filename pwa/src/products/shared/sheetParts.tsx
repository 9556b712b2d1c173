/** The parts of a paper sheet: lines and tables to be filled in by hand. */
import type { ComponentChildren } from "preact";

import type { MeltRequest, SlabPlan } from "../../documents";
import { units } from "../../state";
import { dimensionOf, format, formatRange, t, unitFor } from "../../text";
import { Section } from "../../ui/Card";
import { lowered } from "./burstLadderData";
import { hasLevels } from "./typedBackForm";

/** Rows beyond the plan's own bursts. */
const MORE_BURSTS = 4;
/** The page has no room for more rows in a table; what comes then goes on its back. */
const MOST_PRINTED = 12;

/** What was made ready and weighed in, and the bursts. */
export function Melting({ reply, reheats = 0 }: { reply: Pick<SlabPlan["reply"], "melt" | "melt_request" | "caramel_kg" | "remelt">; reheats?: number }) {
  return (
    <>
      <Line names={["paper.box_ready", ...(reply.remelt?.old_kg ? ["paper.box_old"] : []), "paper.box_weighed"]} values={{ caramel_kg: reply.caramel_kg, old_kg: reply.remelt?.old_kg }} />
      {reply.melt && <Bursts bursts={reply.melt.bursts} more={MORE_BURSTS + reheats} window={reply.melt_request as MeltRequest} />}
    </>
  );
}

/** A column's name, and the unit readings are written in. */
export function degrees(name: string): string {
  return `${t(name)} (${unitFor(dimensionOf("surface_c"), units.value)})`;
}

/** Names with a line to write on behind each. */
export function Line({ names, values = {} }: { names: string[]; values?: Record<string, unknown> }) {
  return (
    <div class="fill">
      {names.map((name) => (
        <span key={name}>{t(name, values)}</span>
      ))}
    </div>
  );
}

interface TableProps {
  heads: string[];
  number: number;
  row: (n: number) => ComponentChildren[];
  looks?: boolean;
}

/** A table to be filled in; a number heads its row. */
export function ByHand({ heads, number, row, looks }: TableProps) {
  const rows = Array.from({ length: Math.min(MOST_PRINTED, number) }, (_, index) => row(index + 1));
  return (
    <>
      <table class={looks ? "by-hand looks" : "by-hand"}>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, index) => (
            <tr key={index}>{cells.map((cell, place) => (typeof cell === "number" ? <th key={place} scope="row">{cell}</th> : <td key={place}>{cell}</td>))}</tr>
          ))}
        </tbody>
      </table>
      {number > MOST_PRINTED && <p class="quiet">{t("paper.on_the_back")}</p>}
    </>
  );
}

interface BurstsProps {
  /** Rows beyond them. */
  more: number;
  bursts: NonNullable<SlabPlan["reply"]["melt"]>["bursts"];
  window: MeltRequest;
}

function Bursts({ bursts, more, window }: BurstsProps) {
  const planned = (row: number) => {
    const burst = bursts[row - 1];
    if (!burst) return undefined;
    const level = lowered(burst.level_percent).level_percent;
    return `${level ? `${t("shop.level", { level_percent: level })}, ` : ""}${format("seconds_s", burst.seconds_s)}, ${formatRange("end_c", burst.low_c, burst.high_c)}`;
  };
  const level = hasLevels(window) ? ["level"] : [];
  return (
    <Section title={t("paper.melting", { window: formatRange("window_c", window.window_low_c, window.window_high_c), limit_c: window.limit_c })}>
      <ByHand
        heads={[...["burst", "planned", "started", "seconds", ...level, "free"].map((one) => t(`paper.column_${one}`)), degrees("paper.column_read")]}
        number={bursts.length + more}
        row={(n) => [n, planned(n), "", "", ...level.map(() => ""), <span class="box" />, ""]}
      />
    </Section>
  );
}
