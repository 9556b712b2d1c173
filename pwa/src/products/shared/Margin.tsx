import { useEffect, useState } from "preact/hooks";

import type { CostPriceReply } from "../../documents";
import { priceOf, shop } from "../../state";
import { formatMoney, formatNumber, t } from "../../text";
import { CountField } from "../../ui/CountField";

interface Props {
  /** What it costs, not rounded. */
  exact_minor: number;
  /** Its price, tax not in it; null: none is set. */
  asked: number | null;
  /** Takes the price that leaves the wanted margin. */
  onTake?: (minor: number) => void;
}

/** What a price leaves, and the price for another margin. */
export function Margin({ exact_minor, asked, onTake }: Props) {
  const [wanted, setWanted] = useState(60);
  const [price, setPrice] = useState<CostPriceReply | null>(null);
  const currency = shop.value?.currency ?? "";
  useEffect(() => void priceOf(exact_minor, asked, wanted).then(setPrice, (error: unknown) => console.error("price:", error)), [exact_minor, asked, wanted]);
  const found = price?.price_minor ?? null;
  return (
    <>
      {price && price.margin_minor !== null && price.margin_percent !== null && asked !== null && <p>{t("cost.margin", { price: formatMoney(asked, currency), money: formatMoney(price.margin_minor, currency), percent: formatNumber(price.margin_percent, 1) })}</p>}
      <CountField label={t("cost.wanted")} value={wanted} least={0} most={99} onValue={setWanted} />
      {found !== null && <p class="answer">{t("cost.price_for", { price: formatMoney(found, currency) })}</p>}
      {onTake && found !== null && found !== asked && (
        <button type="button" class="go go-quiet" onClick={() => onTake(found)}>
          {t("cost.take_price", { price: formatMoney(found, currency) })}
        </button>
      )}
    </>
  );
}
