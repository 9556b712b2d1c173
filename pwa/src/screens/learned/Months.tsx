import { useEffect, useState } from "preact/hooks";

import type { CostMonthsReply } from "../../documents";
import { byMonth, loadTrade, shop, summaries } from "../../state";
import { formatDuration, formatMoney, formatMonth, formatNumber, t } from "../../text";
import { Section } from "../../ui/Card";

type Row = CostMonthsReply["months"][number];

/** So many of the newest months are drawn. */
const MOST = 12;
const [WIDE, HIGH, HEAD, FOOT] = [300, 110, 16, 14];

/** Yield, cost and time of closed batches as they went over the months. */
export function Months() {
  const [found, setFound] = useState<Awaited<ReturnType<typeof byMonth>> | null>(null);
  const known = shop.value;
  useEffect(() => {
    if (known) loadTrade().then(() => byMonth(known, summaries.value)).then(setFound, (error: unknown) => console.error("months:", error));
  }, [known, summaries.value]);
  const months = found?.months.slice(-MOST) ?? [];
  if (!found || months.length === 0) return null;
  const percent = (share: number) => `${formatNumber(100 * share, 0)} %`;
  const money = (minor: number) => formatMoney(Math.round(minor), known?.currency ?? "");
  return (
    <Section title={t("months.title")}>
      <Plot title={t("months.good")} months={months} value={(row) => row.good_share} words={percent} />
      <Plot title={t(known?.currency ? "months.piece_cost" : "months.piece_cost_plain")} months={months} value={(row) => row.piece_minor} words={money} />
      <Plot title={t("months.piece_time")} months={months} value={(row) => row.piece_s} words={formatDuration} />
      <p class="quiet">{t("months.how")}</p>
      {found.waiting > 0 && <p class="quiet">{t("months.waiting", { n: found.waiting })}</p>}
    </Section>
  );
}

interface PlotProps {
  title: string;
  months: Row[];
  value: (row: Row) => number | null;
  words: (value: number) => string;
}

/** A bar for each month from nought up; the highest and the newest say how much. */
function Plot({ title, months, value, words }: PlotProps) {
  const values = months.map(value);
  const most = Math.max(...values.map((one) => one ?? 0));
  if (most === 0) return null;
  const step = WIDE / months.length;
  const wide = Math.min(40, step - 4);
  const said = values.map((one, nth) => `${formatMonth(months[nth]!.month)}: ${one === null ? t("months.none") : words(one)}`);
  const newest = values.reduce((last: number, one, nth) => (one === null ? last : nth), -1);
  const labelled = new Set([values.indexOf(most), newest]);
  // Two labels side by side have no room.
  if (Math.abs(values.indexOf(most) - newest) * step < 60 && labelled.size > 1) labelled.delete(values.indexOf(most));
  return (
    <figure class="plot">
      <figcaption>{title}</figcaption>
      <svg viewBox={`0 0 ${WIDE} ${HEAD + HIGH + FOOT}`} role="img" aria-label={`${title}. ${said.join(", ")}`}>
        {values.map((one, nth) => {
          const high = ((one ?? 0) / most) * HIGH;
          const middle = (nth + 0.5) * step;
          const anchor = nth === 0 && months.length > 3 ? "start" : nth === months.length - 1 && months.length > 3 ? "end" : "middle";
          const edge = anchor === "start" ? 0 : anchor === "end" ? WIDE : middle;
          return (
            <g key={months[nth]!.month}>
              {one !== null && <rect x={middle - wide / 2} y={HEAD + HIGH - high} width={wide} height={high} />}
              {one !== null && labelled.has(nth) && (
                <text x={edge} y={HEAD + HIGH - high - 4} text-anchor={anchor}>
                  {words(one)}
                </text>
              )}
              {(months.length <= 6 || nth % 2 === (months.length - 1) % 2) && (
                <text x={middle} y={HEAD + HIGH + FOOT - 2} text-anchor="middle">
                  {formatMonth(months[nth]!.month)}
                </text>
              )}
            </g>
          );
        })}
        <line x1="0" x2={WIDE} y1={HEAD + HIGH} y2={HEAD + HIGH} />
      </svg>
    </figure>
  );
}
