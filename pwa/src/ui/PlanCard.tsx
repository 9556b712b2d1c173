import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

import type { Input } from "../documents";
import { t } from "../text";
import { BasisMark } from "./BasisMark";

/** One line of the card: what to do, the figure that is read from an arm's length, and what it rests on. */
export interface PlanRow {
  /** Key of its first word ("Weigh out"). */
  what: string;
  figure: string;
  note?: string | undefined;
  /** Fields of the inputs that matter most to it. */
  rests_on?: string[];
}

interface Props {
  rows: PlanRow[];
  inputs: Input[];
  /** Stands below the rows: what goes wrong, the plan in words. */
  children?: ComponentChildren;
}

/** The plan of a batch as one card for the morning: a line a step, a small mark for what it rests on. */
export function PlanCard({ rows, inputs, children }: Props) {
  return (
    <section class="card plan-card">
      <h2>{t("desk.the_plan")}</h2>
      <dl>
        {rows.map((row) => (
          <Line key={row.what} row={row} inputs={inputs} />
        ))}
      </dl>
      {children}
    </section>
  );
}

function Line({ row: { what, figure, note, rests_on = [] }, inputs }: { row: PlanRow; inputs: Input[] }) {
  const [open, setOpen] = useState(false);
  const found = rests_on.map((field) => inputs.find((one) => one.field === field)).filter((one) => one !== undefined);
  const guessed = found.some((one) => one.basis === "assumed");
  return (
    <div class="plan-line">
      <dt>{t(what)}</dt>
      <dd>
        <b>{figure}</b>
        {note && <span>{note}</span>}
      </dd>
      {found.length > 0 && (
        <dd class="plan-mark">
          <button type="button" class={guessed ? "mark mark-assumed" : "mark"} aria-expanded={open} aria-label={t("plan.rests_on", { what: t(what) })} onClick={() => setOpen(!open)}>
            {guessed ? "≈" : "✓"}
          </button>
        </dd>
      )}
      {open && (
        <dd class="plan-basis marks">
          {found.map((input) => (
            <BasisMark key={input.field} input={input} />
          ))}
        </dd>
      )}
    </div>
  );
}
