import { useEffect, useState } from "preact/hooks";

import type { Order, OrdersOverviewReply, Values, Warning } from "../../documents";
import { checkOrder, loadTrade, newId, now, orders, ordersOverview, packs, writeFact } from "../../state";
import { format, formatNumber, t } from "../../text";
import { Section } from "../../ui/Card";
import { Desk } from "../../ui/Desk";
import { WordsField } from "../../ui/fields";
import { LongList } from "../../ui/LongList";
import { ListFiles } from "../ListFiles";
import { NeedsPage } from "./NeedsPage";
import { OrderForm } from "./OrderForm";
import { OrderPage } from "./OrderPage";
import { isFound, lineWords, nameOf, whenWords } from "./orderWords";
import { nextTurn, toPlaceAgain } from "./weekly";

/** From here on a list is searched, not read. */
const FEW = 8;

/** The list of orders, and beside or instead of it the one that is taken or looked at. */
export function OrdersScreen({ id, part }: { id: string | undefined; part: string | undefined }) {
  const [loaded, setLoaded] = useState(false);
  useEffect(() => void loadTrade().then(() => setLoaded(true)), []);
  const own = id === "new" || id === "needs";
  const order = id && !own ? orders.value.get(id) : undefined;
  const title = own ? t(id === "needs" ? "needs.title" : "orders.new") : order ? order.customer || t("orders.nobody") : t("desk.place_orders");
  return (
    <Desk title={title} here="orders">
      <div class={id ? "two-panes one-open" : "two-panes"}>
        <OrderList loaded={loaded} open={id} />
        {id === "new" && <OrderForm key="new" order={null} />}
        {id === "needs" && loaded && <NeedsPage />}
        {order && part === "change" && <OrderForm key={order.id} order={order} />}
        {order && part !== "change" && <OrderPage key={order.id} order={order} />}
        {id && !own && loaded && !order && <p class="card">{t("orders.not_here")}</p>}
      </div>
    </Desk>
  );
}

function OrderList({ loaded, open }: { loaded: boolean; open: string | undefined }) {
  const [sought, setSought] = useState("");
  const [seen, setSeen] = useState<OrdersOverviewReply | null>(null);
  useEffect(() => {
    if (loaded) ordersOverview().then(setSeen).catch((error: unknown) => console.error("orders:", error));
  }, [loaded, orders.value, packs.value]);
  const all = [...orders.value.values()].filter((one) => one.placed_ms !== null);
  const over = all.filter((one) => one.state === "handed" || one.state === "cancelled").sort((a, b) => (b.wanted_ms ?? 0) - (a.wanted_ms ?? 0));
  const found = (list: Order[]) => list.filter((one) => isFound(one, sought));
  const running = (seen?.orders ?? []).flatMap((row) => orders.value.get(row.order_id) ?? []);
  const inHand = (seen?.packs ?? []).flatMap(({ pack_id, left }) => (left > 0 ? (packs.value.get(pack_id) ?? []) : []));
  const rows = new Map((seen?.orders ?? []).map((row) => [row.order_id, row]));
  const rowOf = (order: Order) => rows.get(order.id);
  return (
    <div class="pane-list">
      <a class="go" href="/orders/new">
        {t("orders.new")}
      </a>
      {loaded && all.length === 0 && <p class="card">{t("orders.none")}</p>}
      {running.some((order) => missingOf(rowOf(order)).length > 0) && (
        <a class="go go-quiet" href="/orders/needs">
          {t("orders.plan_missing")}
        </a>
      )}
      {all.length > FEW && <WordsField label={t("orders.seek")} value={sought} most={60} onValue={setSought} />}
      {sought && found(all).length === 0 && <p class="card">{t("desk.none_found", { sought })}</p>}
      <LongList all={found(running)} card={(order) => <OrderCard key={order.id} order={order} open={open === order.id} missing={missingOf(rowOf(order))} late={rowOf(order)?.is_late ?? false} />} />
      {loaded && <Weekly />}
      {seen && (seen.boxes.length > 0 || inHand.length > 0) && (
        <Section title={t("orders.boxes")}>
          <ul class="plain">
            {seen.boxes.map((box) => (
              <li key={box.box_id}>{t("orders.box_line", { box: nameOf({ box_id: box.box_id, product_id: null }), wanted: box.wanted, in_hand: box.in_hand, missing: box.missing })}</li>
            ))}
            {inHand.map((pack) => (
              <li key={pack.id}>
                <a href={`/label/${pack.id}`}>{t("labels.of_boxes", { box: nameOf({ box_id: pack.box_id, product_id: null }), code: pack.code })}</a>
              </li>
            ))}
          </ul>
        </Section>
      )}
      {over.length > 0 && (
        <details class="card">
          <summary>{t("orders.over", { n: over.length })}</summary>
          <LongList all={found(over)} card={(order) => <OrderCard key={order.id} order={order} open={open === order.id} missing={[]} late={false} />} />
        </details>
      )}
      <ListFiles place="orders" />
    </div>
  );
}

type Row = OrdersOverviewReply["orders"][number] | undefined;

/** What is still to pack: so many boxes, and what is sold by weight. */
function missingOf(row: Row): string[] {
  const sum = (weighed: boolean) => (row?.lines ?? []).reduce((all, line) => ((line.mass_kg !== null) === weighed ? all + line.missing : all), 0);
  const [boxes, mass_kg] = [sum(false), sum(true)];
  return [...(boxes > 0 ? [formatNumber(boxes, 0)] : []), ...(mass_kg > 0 ? [format("mass_kg", mass_kg)] : [])];
}

/** Orders of every week that are over: one tap places the next. */
function Weekly() {
  const [asked, setAsked] = useState<{ id: string; warnings: Warning[] } | null>(null);
  const place = async (order: Order) => {
    const body = nextTurn(order, now.value);
    const { warnings } = await checkOrder(null, "placed", body);
    if (warnings.length > 0 && asked?.id !== order.id) return setAsked({ id: order.id, warnings });
    setAsked(null);
    await writeFact("order", newId(), "placed", body);
  };
  return toPlaceAgain(orders.value.values(), now.value).map((order) => (
    <section class="card" key={order.id}>
      <p>{t("orders.again", { customer: order.customer || t("orders.nobody"), what: order.lines.map(lineWords).join(", "), when: whenWords({ ...order, wanted_ms: nextTurn(order, now.value)["wanted_ms"] as number }) })}</p>
      {asked?.id === order.id && asked.warnings.map((one) => <p class="warning-line" role="alert" key={one.code}>{t(`warning.${one.code}`, one.values as Values)}</p>)}
      <button type="button" class="go go-quiet" onClick={() => void place(order)}>
        {t(asked?.id === order.id ? "orders.all_the_same" : "orders.place")}
      </button>
    </section>
  ));
}

function OrderCard({ order, open, missing, late }: { order: Order; open: boolean; missing: string[]; late: boolean }) {
  return (
    <li>
      <a class="card batch-card" href={`/orders/${order.id}`} aria-current={open ? "true" : undefined}>
        <b>{order.customer || t("orders.nobody")}</b>
        <span>{whenWords(order)}</span>
        <span>{order.lines.map(lineWords).join(", ")}</span>
        {late && <strong class="card-late">{t("orders.late")}</strong>}
        {order.state === "part" && <span>{t("orders.part")}</span>}
        {order.state === "handed" && <span>{t("orders.handed")}</span>}
        {order.state === "cancelled" && <span>{t("orders.cancelled")}</span>}
        {order.state !== "handed" && order.state !== "cancelled" && <span>{missing.length > 0 ? t("orders.to_pack", { missing: missing.join(" + ") }) : t("orders.all_packed")}</span>}
        {order.differences.length > 0 && <strong class="card-late">{t("orders.differs")}</strong>}
      </a>
    </li>
  );
}
