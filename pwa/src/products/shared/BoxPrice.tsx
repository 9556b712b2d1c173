import { useEffect, useState } from "preact/hooks";

import type { CostBoxReply, Shop, Values } from "../../documents";
import { boxCost, loadTrade, lots } from "../../state";
import { formatMoney, t } from "../../text";
import { Margin } from "./Margin";

interface Props {
  shop: Shop;
  /** The box as it is being typed. */
  values: Values;
  onValue: (field: string, value: unknown) => void;
}

/** What a box costs by what is in it, and the price that leaves a wanted margin. */
export function BoxPrice({ shop, values, onValue }: Props) {
  const [cost, setCost] = useState<CostBoxReply | null>(null);
  const lines = (values["lines"] ?? []) as Shop["boxes"][number]["lines"];
  const packaging = (values["packaging"] ?? []) as Shop["boxes"][number]["packaging"];
  useEffect(() => {
    loadTrade().then(() => boxCost(shop, { lines, packaging })).then(setCost, (error: unknown) => console.error("cost:", error));
  }, [JSON.stringify([lines, packaging]), lots.value, shop]);
  if (!cost || lines.length === 0) return null;
  const money = (minor: number) => formatMoney(minor, shop.currency);
  return (
    <details class="card">
      <summary>{t("cost.price_by_margin")}</summary>
      {cost.parts.length > 0 && <p class="answer">{t("cost.of_box", { money: money(cost.total_minor) })}</p>}
      <ul class="plain">
        {cost.parts.map((part, nth) => (
          <li key={nth}>{t("cost.part", { name: part.name, money: money(part.minor) })}</li>
        ))}
      </ul>
      {cost.not_priced.length > 0 && <p class="warning-line">{t("cost.box_lacks", { name: cost.not_priced.join(", ") })}</p>}
      <p class="quiet">{t("cost.by_last_batches")}</p>
      {cost.exact_minor !== null && cost.parts.length > 0 && <Margin exact_minor={cost.exact_minor} asked={values["price_minor"] as number | null} onTake={(minor) => onValue("price_minor", minor)} />}
    </details>
  );
}
