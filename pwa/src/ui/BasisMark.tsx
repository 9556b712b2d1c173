import { useState } from "preact/hooks";

import type { Input } from "../documents";
import { fieldName, format, hasText, t } from "../text";

/** Says by a dotted underline what a number rests on; a tap shows the source and how to measure one's own. */
export function BasisMark({ input }: { input: Input }) {
  const [open, setOpen] = useState(false);
  return (
    <span class={`basis basis-${input.basis}`}>
      <button type="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t(input.measure_by ? "basis.measure_mark" : "basis.mark", { what: fieldName(input.field), basis: t(`basis.${input.basis}`) })}
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

/** The value used, its source and the way to measure it, each a sentence. */
function basisWords(input: Input): string[] {
  const words = [t("basis.value", { value: shownValue(input) }), t(`basis.${input.basis}_long`)];
  if (input.source && hasText(`source.${input.source}`)) words.push(t("basis.source", { source: t(`source.${input.source}`) }));
  if (input.measure_by && hasText(`measure.${input.measure_by}`)) words.push(t(`measure.${input.measure_by}`));
  return words;
}

/** Fractions that people say in per cent. */
const SHARES = ["residue", "vessel_share", "rated_share"];

export function shownValue({ field, value, unit }: Input): string {
  const name = (field.split(".").at(-1) ?? field).replace(/\[\d+\]$/, "");
  if (typeof value === "number" && SHARES.includes(name)) return t("basis.percent", { percent: 100 * value });
  if (typeof value === "boolean") return t(value ? "basis.yes" : "basis.no");
  if (typeof value === "string") return hasText(`word.${value}`) ? t(`word.${value}`) : value.replaceAll("_", " ");
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return t("basis.own");
  const shown = format(name, value);
  // A suffix the text catalogue does not know leaves the unit to the engine's own word.
  return typeof value === "number" && unit && !/[^\d.,\s\u202f−-]/.test(shown) ? `${shown} ${unit}` : shown;
}
