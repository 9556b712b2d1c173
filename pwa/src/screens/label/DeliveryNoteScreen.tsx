import { useEffect, useMemo, useState } from "preact/hooks";

import type { Order, Shop } from "../../documents";
import { type DeliveryNote, deliveryNotePages } from "../../labels/deliveryNote";
import { unknownLetters } from "../../labels/letters";
import type { Sheet } from "../../labels/paper";
import { pdf } from "../../labels/pdf";
import { handOverFile, loadTrade, now, orders, packs, shop } from "../../state";
import { formatDate, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { SwitchField } from "../../ui/fields";
import { lineWords, nameOf } from "../orders/orderWords";
import { Preview } from "./Preview";

/** The delivery note of an order: what was handed over, or what is wanted. */
export function DeliveryNoteScreen({ orderId }: { orderId: string }) {
  const [loaded, setLoaded] = useState(false);
  useEffect(() => void loadTrade().then(() => setLoaded(true)), []);
  const order = orders.value.get(orderId);
  return (
    <Desk title={t("labels.delivery_note")} here="orders">
      {loaded && !order && <p class="card">{t("orders.not_here")}</p>}
      {order && shop.value && <Note order={order} shop={shop.value} />}
      <a class="go go-quiet" href={order ? `/orders/${order.id}` : "/orders"}>
        {t("button.back")}
      </a>
    </Desk>
  );
}

function Note({ order, shop: known }: { order: Order; shop: Shop }) {
  const [sheet, setSheet] = useState<Sheet>(known.rule === "us" || known.units.length === "in" ? "letter" : "a4");
  const [opened_ms] = useState(() => now.peek());
  const pages = useMemo(() => deliveryNotePages(noteOf(order, known, opened_ms), sheet), [order, known, sheet]);
  const file = useMemo(() => pdf(pages, t("labels.delivery_note")), [pages]);
  const sheets = (["a4", "letter"] as const).map((value) => ({ value, label: t(`labels.sheet_${value}`) }));
  return (
    <>
      {pages.map((page, nth) => (
        <Preview page={page} label={t("labels.delivery_note")} key={nth} />
      ))}
      <section class="card">
        <SwitchField legend={t("labels.paper")} value={sheet} options={sheets} onValue={(value) => setSheet(value as Sheet)} />
        <button type="button" class="go" onClick={() => void handOverFile("delivery-note.pdf", "application/pdf", file)}>
          {t("labels.print_note")}
        </button>
      </section>
    </>
  );
}

type HandedLine = Order["handed"][number];

function noteOf(order: Order, known: Shop, now_ms: number): DeliveryNote {
  const customer = known.customers.find((one) => one.id === order.customer_id);
  const codes = (packId: string | null | undefined, boxId: string | null) => {
    const own = packId ? packs.value.get(packId) : [...packs.value.values()].filter((pack) => pack.box_id === boxId && pack.count > 0).sort((a, b) => (a.at_ms ?? 0) - (b.at_ms ?? 0))[0];
    return own?.code ?? "";
  };
  const handed = order.handed.length > 0;
  const lines = (handed ? order.handed : order.lines).map((line) => ({
    count: line.count === null ? "" : String(line.count),
    what: line.count === null ? lineWords(line) : nameOf(line),
    lot: handed ? codes((line as HandedLine).pack_id, line.box_id) : "",
  }));
  return printable({
    title: t("labels.delivery_note"),
    from: [known.name || t("labels.nameless"), ...(known.address ?? "").split("\n")],
    to: [order.customer || t("orders.nobody"), ...(customer?.address ?? "").split("\n")],
    facts: [formatDate(order.handed.at(-1)?.at_ms ?? now_ms)],
    headings: { count: t("labels.note_count"), what: t("labels.note_what"), lot: t("labels.lot") },
    lines,
    note: order.note,
    received: t("labels.received"),
  });
}

/** A letter that the font lacks is a question mark: of a note, unlike of a label, the rest is still worth having. */
function printable<T>(value: T): T {
  const known = JSON.stringify(value, (_, one: unknown) => (typeof one === "string" ? [...one].map((letter) => (unknownLetters(letter) ? "?" : letter)).join("") : one));
  return JSON.parse(known) as T;
}
