import type { ComponentChildren } from "preact";

import { figure, formatCountdown, formatDuration, formatRange, t } from "../text";

interface Props {
  number: { name: string; value: number; low?: number | null; high?: number | null };
  now: number;
  /** What the clock is called, or "". */
  name: string;
}

/** The one number that matters, readable at two metres; `due_ms` counts down. */
export function BigNumber({ number, now, name }: Props) {
  const left = number.value - now;
  const due = number.name === "due_ms";
  const { text, unit } = due ? formatCountdown(left) : figure(number.name, number.value);
  const late = due && left < -1000 ? t("screen.late", { late_s: -left / 1000 }) : "";
  const range = typeof number.low === "number" && typeof number.high === "number";
  return (
    <p class="number">
      <Digits text={text} unit={unit} />
      {(late || name) && <span class={late ? "number-note" : "number-note number-name"}>{late || name}</span>}
      {range && <span class="number-note">{t("screen.likely_range", { range: formatRange(number.name, number.low as number, number.high as number) })}</span>}
      {due && <span class="unseen">{formatDuration(Math.max(0, left / 1000))}</span>}
    </p>
  );
}

/** A decimal comma hangs below the digits; at this size it would reach into what stands under them. */
function withComma(text: string): ComponentChildren {
  const [whole, part] = text.split(",");
  if (part === undefined) return text;
  return (
    <>
      {whole}
      <span class="comma">,</span>
      {part}
    </>
  );
}

/** A size in two units: "2 lb 8 oz". */
const IN_TWO = /^(\S+)\s(\p{L}+)\s(\S+)\s(\p{L}+)$/u;
/** What the two units take of the room, in digits. */
const UNITS_TAKE = 1.7;

/** Big digits with their unit small beside them; a number of more than `most` characters is set narrower, never lower. */
export function Digits({ text, unit, most = 4 }: { text: string; unit: string; most?: number }) {
  const [, first, large, second, small] = IN_TWO.exec(text) ?? [];
  const parts = first && large && second && small ? [[first, large], [second, small]] as const : [[text, unit]] as const;
  const length = parts.reduce((sum, [number]) => sum + widthOf(number), 0);
  const squeeze = Math.min(1, (most - (parts.length - 1) * UNITS_TAKE) / length);
  return (
    <span class="digits">
      {parts.map(([number, its]) => (
        <>
          <b style={squeeze < 1 ? { transform: `scaleX(${squeeze})`, width: `${squeeze * widthOf(number) * CLOSE}ch` } : undefined}>{withComma(number)}</b>
          {its && <small>{its}</small>}
        </>
      ))}
    </span>
  );
}

/** Letters of this size are set so close. */
const CLOSE = 0.93;

/** How wide a number is, in digits. */
function widthOf(number: string): number {
  return [...number].reduce((sum, one) => sum + (/[.,:/\s]/.test(one) ? 0.55 : 1), 0);
}
