import { useEffect, useState } from "preact/hooks";

import type { CostBatchReply } from "../../documents";
import { type BatchRecord, costOf, loadTrade, lots, shop } from "../../state";
import { formatMoney, t } from "../../text";
import { Margin } from "../../products/shared/Margin";
import { Card } from "../../ui/Card";
import { boxName, boxOf } from "./packWords";

/** What a counted batch cost: parts, pieces, boxes, and what of it was wasted. */
export function CostCard({ record }: { record: BatchRecord }) {
  const { run, events } = record;
  const [cost, setCost] = useState<CostBatchReply | null>(null);
  const counted = run.pieces !== null && !run.thrown_away;
  const currency = shop.value?.currency ?? "";
  const money = (minor: number) => formatMoney(minor, currency);
  useEffect(() => {
    const known = shop.value;
    if (!counted || !known) return;
    loadTrade().then(() => costOf(known, record)).then(setCost, (error: unknown) => console.error("cost:", error));
  }, [lots.value, shop.value, run.pieces, events.length]);
  if (!counted || !cost) return null;
  const unpriced = cost.not_priced.length > 0 && <p class="warning-line">{t("cost.not_priced", { name: [...new Set(cost.not_priced)].join(", ") })}</p>;
  // Nothing has a price: a sum of nought would look like one.
  if (unpriced && cost.total_minor === 0) return <Card title={t("cost.title")}>{unpriced}</Card>;
  return (
    <Card title={t("cost.title")}>
      <p class="answer">{money(cost.total_minor)}</p>
      <ul class="plain">
        {cost.parts.map((part, nth) => (
          <li key={nth}>{t("cost.part", { name: part.name === "hands" ? t("cost.hands") : part.name, money: money(part.minor) })}</li>
        ))}
      </ul>
      {cost.piece_minor !== null && <p>{t("cost.piece", { money: money(cost.piece_minor) })}</p>}
      <p class="quiet">{t("cost.as_planned")}</p>
      <p>{t("cost.waste", { money: money(cost.waste_minor) })}</p>
      {shop.value?.rate_minor_per_h == null && <p class="quiet">{t("cost.no_rate")}</p>}
      {unpriced}
      {cost.boxes.map(({ name, minor, exact_minor }) => (minor === null || exact_minor === null ? null : <BoxCost key={name} box_id={name} minor={minor} exact_minor={exact_minor} />))}
    </Card>
  );
}

/** A box: its cost, what its price leaves, and the price for another margin. */
function BoxCost({ box_id, minor, exact_minor }: { box_id: string; minor: number; exact_minor: number }) {
  return (
    <details>
      <summary>{t("cost.box_line", { box: boxName(box_id), money: formatMoney(minor, shop.value?.currency ?? "") })}</summary>
      <Margin exact_minor={exact_minor} asked={boxOf(box_id)?.price_minor ?? null} />
    </details>
  );
}
