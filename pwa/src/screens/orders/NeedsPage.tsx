import { useEffect, useState } from "preact/hooks";

import type { NeedsPlanReply, ProductRow } from "../../documents";
import { formPrefill } from "../../products/shared/formPrefill";
import { traitsOf } from "../../products/traitRegistry";
import { go } from "../../router";
import { batches, orders, packs, shop } from "../../state";
import { formatDay, t } from "../../text";
import { Section } from "../../ui/Card";
import { amountWords, materialName } from "../stock/stockWords";
import { type Found, needs } from "./needs";
import { nameOf } from "./orderWords";

const DAY_MS = 86_400_000;

/** What open orders need that is neither made nor planned: batches, each one tap from its plan, and what to buy. */
export function NeedsPage() {
  const [found, setFound] = useState<Found | null>(null);
  useEffect(() => {
    needs().then((now) => now && setFound(now)).catch((error: unknown) => console.error("needs:", error));
  }, [orders.value, packs.value, batches.value]);
  if (!found) return <p class="quiet">{t("desk.screen_loading")}</p>;
  const { products, materials, unknown } = found.needs;
  const short = materials.filter((one) => one.short > 0);
  const unitOf = (name: string) => found.stock.materials.find((one) => one.material === name)?.unit ?? "kg";
  return (
    <div class="pane-one">
      {products.length === 0 && <p class="card">{t("needs.nothing")}</p>}
      {products.map((row) => (
        <ProductNeeds key={row.product_id} row={row} />
      ))}
      {short.length > 0 && (
        <Section title={t("needs.buy")}>
          <ul class="plain">
            {short.map((one) => (
              <li key={one.material}>
                {one.by_ms === null
                  ? t("needs.buy_line", { material: materialName(one.material), amount: amountWords(one.short, unitOf(one.material)) })
                  : t("needs.buy_by", { material: materialName(one.material), amount: amountWords(one.short, unitOf(one.material)), when: formatDay(one.by_ms - DAY_MS) })}
              </li>
            ))}
          </ul>
          <a class="go go-quiet" href="/stock">
            {t("desk.place_stock")}
          </a>
        </Section>
      )}
      {found.unlisted.map(({ product_id, what }) => (
        <p class="warning-line" key={`${product_id} ${what}`}>
          {t(`needs.unlisted_${what}`, { product: nameOf({ box_id: null, product_id }) })}
        </p>
      ))}
      {products.length > 0 && [short, found.unlisted, found.unsized, unknown].every((one) => one.length === 0) && <p class="quiet">{t("needs.all_here")}</p>}
      {unknown.length > 0 && <p class="warning-line">{t("needs.unknown")}</p>}
      {found.unsized.length > 0 && <p class="quiet">{t("needs.unsized", { names: found.unsized.map((id) => nameOf({ box_id: null, product_id: id })).join(", ") })}</p>}
      <a class="go go-quiet" href="/orders">
        {t("button.back")}
      </a>
    </div>
  );
}

function ProductNeeds({ row }: { row: NeedsPlanReply["products"][number] }) {
  const product = shop.value?.products.find((one) => one.id === row.product_id);
  const first = row.batches[0];
  return (
    <Section title={nameOf({ box_id: null, product_id: row.product_id })}>
      <p>{row.by_ms === null ? t("needs.wanted", { n: row.wanted }) : t("needs.wanted_by", { n: row.wanted, when: formatDay(row.by_ms) })}</p>
      {row.make > row.wanted && <p class="quiet">{t("needs.overage", { n: row.make - row.wanted })}</p>}
      {product && first && row.batches.length > 1 && <p class="quiet">{t("needs.batches", { n: row.batches.length })}</p>}
      {product && first && (
        <button type="button" class="go" onClick={() => planBatch(product, Math.max(1, Math.round((first.pieces * row.wanted) / row.make)))}>
          {t("needs.plan_batch", { n: Math.max(1, Math.round((first.pieces * row.wanted) / row.make)) })}
        </button>
      )}
    </Section>
  );
}

/** Opens the plan's form with the product and the good pieces filled in. */
function planBatch(product: ProductRow, pieces: number): void {
  formPrefill.product_id = product.id;
  formPrefill.pieces = pieces;
  go((product.kind && traitsOf(product.kind).route) ?? "/plan");
}
