import { useState } from "preact/hooks";

import type { Order, OrderLine, Values, Warning } from "../../documents";
import { checkOrder, ordersOverview, packs, undoLastFact, writeFact } from "../../state";
import { formatDay, formatMoney, t } from "../../text";
import { CountField } from "../../ui/CountField";
import { StreamHistory } from "../StreamHistory";
import { lineWords, nameOf, whenWords } from "./orderWords";
import { pickPacks } from "./pickPacks";

/** One order: what is wanted, what was handed over, and what one may do. */
export function OrderPage({ order }: { order: Order }) {
  const isOver = order.state === "handed" || order.state === "cancelled";
  return (
    <div class="pane-one">
      <section class="card">
        <p class="answer">{whenWords(order)}</p>
        <ul class="plain">
          {order.lines.map((line, nth) => (
            <li key={nth}>{lineWords(line)}</li>
          ))}
        </ul>
        {order.price_minor !== null && <p>{t("orders.price", { price: formatMoney(order.price_minor, order.currency) })}</p>}
        {order.note && <p>{order.note}</p>}
        {order.repeats && <p class="quiet">{t("orders.every_week")}</p>}
        {order.handed.map((one, nth) => (
          <p class="quiet" key={nth}>
            {t("orders.handed_line", { what: lineWords(one), when: formatDay(one.at_ms) })} {one.pack_id && <a href={`/packs/${one.pack_id}`}>{packs.value.get(one.pack_id)?.code || t("pack.title")}</a>}
          </p>
        ))}
        {order.cancelled && <p class="warning-line">{t("orders.cancelled")}</p>}
      </section>
      {order.differences.map((one, nth) => (
        <p class="card card-wrong" role="alert" key={nth}>
          {t(`orders.differs_${one.code}`)}
        </p>
      ))}
      {!isOver && <HandOver order={order} />}
      {!isOver && (
        <a class="go go-quiet" href={`/orders/${order.id}/change`}>
          {t("orders.change")}
        </a>
      )}
      <a class="go go-quiet" href={`/label/order/${order.id}`}>
        {t("labels.delivery_note")}
      </a>
      {!isOver && <Cancel order={order} />}
      <button type="button" class="go go-quiet" onClick={() => void undoLastFact("order", order.id)}>
        {t("orders.undo")}
      </button>
      <StreamHistory of="order" id={order.id} document={order} more={(_, body) => (Array.isArray(body["lines"]) ? { what: (body["lines"] as OrderLine[]).map(lineWords).join(", ") } : {})} />
      <a class="go go-quiet" href="/orders">
        {t("button.back")}
      </a>
    </div>
  );
}

/** Hands over what is still wanted, or less. */
function HandOver({ order }: { order: Order }) {
  const rest = order.lines.map((line) => ({ ...line, count: line.count === null ? null : Math.max(0, (line.count ?? 0) - handedOf(order, line)) }));
  const [counts, setCounts] = useState<(number | null)[]>(rest.map((line) => line.count));
  const [warnings, setWarnings] = useState<Warning[]>([]);
  const lines = rest.map((line, nth) => ({ ...line, count: counts[nth] ?? null, pack_id: null })).filter((line) => line.mass_kg !== null || (line.count ?? 0) > 0);
  const hand = async () => {
    if (lines.length === 0) return;
    // Which boxes go out is noted by their pack, so that each leads to its customer.
    const body: Values = { lines: pickPacks(lines, (await ordersOverview()).packs, packs.value), seen: order.handovers };
    const checked = await checkOrder(order.id, "handed_over", body);
    if (checked.warnings.length > 0 && warnings.length === 0) return setWarnings(checked.warnings);
    await writeFact("order", order.id, "handed_over", body);
  };
  return (
    <section class="card">
      {rest.map((line, nth) => (line.count === null ? <p key={nth}>{lineWords(line)}</p> : <CountField key={nth} label={nameOf(line)} value={counts[nth] ?? 0} least={0} most={100_000} onValue={(count) => setCounts(counts.map((one, at) => (at === nth ? count : one)))} />))}
      {warnings.map((one) => (
        <p class="warning-line" role="alert" key={one.code}>
          {t(`warning.${one.code}`, one.values as Values)}
        </p>
      ))}
      <button type="button" class="go" aria-disabled={lines.length === 0} onClick={() => void hand()}>
        {t("orders.hand_over")}
      </button>
    </section>
  );
}

function handedOf(order: Order, line: OrderLine): number {
  return order.handed.filter((one) => one.box_id === line.box_id && one.product_id === line.product_id && one.mass_kg === null).reduce((sum, one) => sum + (one.count ?? 0), 0);
}

function Cancel({ order }: { order: Order }) {
  const [asked, setAsked] = useState(false);
  return (
    <button type="button" class="go go-quiet" onClick={() => (asked ? void writeFact("order", order.id, "cancelled", { why: "" }) : setAsked(true))}>
      {t(asked ? "orders.really_cancel" : "orders.cancel")}
    </button>
  );
}
