import { useState } from "preact/hooks";

import type { Input } from "../documents";
import { dimensionOf, fieldName, format, formatNumber, hasText, SUFFIX_OF, t } from "../text";

/** Says by a dotted underline what a number rests on; a tap shows the source and how to measure one's own. */
export function BasisMark({ input }: { input: Input }) {
  const [open, setOpen] = useState(false);
  return (
    <span class={`basis basis-${input.basis}`}>
      <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t(input.measure_by ? "basis.measure_mark" : "basis.mark", { what: fieldName(input.field), basis: basisWord(input) })}
      </button>
      {open && (
        <span class="basis-more" role="note">
          {basisWords(input).map((words) => (
            <span key={words}>{words}</span>
          ))}
        </span>
      )}
    </span>
  );
}

/** "assumed", "measured, 4 batches", … */
export function basisWord({ basis, n }: Input): string {
  return basis === "measured" && n ? t("basis.measured_n", { n }) : t(`basis.${basis}`);
}

/** The value used, its source and the way to measure it, each a sentence. */
function basisWords(input: Input): string[] {
  const words = [t("basis.value", { value: shownValue(input) }), t(`basis.${input.basis}_long`)];
  if (input.source && hasText(`source.${input.source}`)) words.push(t("basis.source", { source: t(`source.${input.source}`) }));
  if (input.measure_by && hasText(`measure.${input.measure_by}`)) words.push(t(`measure.${input.measure_by}`));
  return words;
}

/** Fractions that people say in per cent. */
const SHARES = [
  "residue",
  "vessel_share",
  "rated_share",
  "rated_sd",
  "measured_sd",
  "heat_sd",
  "loss_sd",
  "drift_sd",
  "warm_loss",
  "skin_chance",
  "guard",
  "guard_unread",
  "aim",
  "pour_risk",
  "steady_chance",
  "steady_share",
  "humidity",
  "humid_share",
  "sugar_bloom_share",
  "pickup",
];

export function shownValue({ field, value, unit }: Input): string {
  const name = (field.split(".").at(-1) ?? field).replace(/\[\d+\]$/, "");
  if (typeof value === "number" && SHARES.includes(name)) return t("basis.percent", { percent: 100 * value });
  if (typeof value === "boolean") return t(value ? "basis.yes" : "basis.no");
  if (typeof value === "string") return hasText(`word.${value}`) ? t(`word.${value}`) : value.replaceAll("_", " ");
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return t("basis.own");
  // Compound units, such as that of a contact, are not the reader's: they stay the engine's.
  const suffix = SUFFIX_OF[unit];
  if (typeof value === "number" && suffix === undefined) return `${threeFigures(value)} ${unit}`.trim();
  // By its whole path: what belongs to chocolate is shown finer.
  const path = field.replace(/\[\d+\]$/, "");
  return format(suffix && dimensionOf(path) === "" ? `${path}_${suffix}` : path, value);
}

/** A number as it is, to three figures: constants run from a thousandth to thousands. */
function threeFigures(value: number): string {
  return formatNumber(value, value === 0 ? 0 : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value)))));
}
