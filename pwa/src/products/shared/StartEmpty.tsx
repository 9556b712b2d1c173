import { useState } from "preact/hooks";

import type { Shop, ShopEdit, ShopList } from "../../documents";
import { inventedDocs, SHOP_LISTS } from "../../state";
import { t } from "../../text";
import { titleOf } from "./rowForms";
import { writeEdits } from "./shopEdits";
import { Card } from "../../ui/Card";

interface Row {
  list: ShopList;
  doc: string;
  title: string;
}
/** What would be taken away, and what would stay. */
interface Removal {
  goes: Row[];
  stays: Row[];
  /** Whether the shop's name is an invented one. */
  name: boolean;
}

/** The invented shop gives way to one's own: asks first, and takes only what is invented. */
export function StartEmpty({ shop }: { shop: Shop }) {
  const [asked, setAsked] = useState<Removal | null>(null);
  return (
    <Card title={t("shop.invented_title")}>
      {asked ? <Question asked={asked} shop={shop} onDone={() => setAsked(null)} /> : <p>{t("shop.invented_how")}</p>}
      {!asked && (
        <button type="button" class="go go-quiet" onClick={() => void inventedDocs().then((docs) => setAsked(removalOf(shop, docs)))}>
          {t("shop.start_empty")}
        </button>
      )}
    </Card>
  );
}

function Question({ asked, shop, onDone }: { asked: Removal; shop: Shop; onDone: () => void }) {
  const [busy, setBusy] = useState(false);
  const take = () => {
    if (busy) return;
    setBusy(true);
    void empty(shop, asked).finally(onDone);
  };
  return (
    <div role="group" aria-label={t("shop.start_empty")}>
      <h3>{t("shop.goes")}</h3>
      <Rows rows={asked.goes} none="shop.nothing_goes" />
      <h3>{t("shop.stays")}</h3>
      <Rows rows={asked.stays} none="shop.nothing_stays" />
      <p>{t("shop.trade_goes")}</p>
      <p>{t("shop.batches_stay")}</p>
      <button type="button" class="go" aria-disabled={busy} onClick={take}>
        {t("shop.take_away")}
      </button>
      <button type="button" class="go go-quiet" onClick={onDone}>
        {t("shop.leave_as_is")}
      </button>
    </div>
  );
}

/** Names by the list they stand in. */
function Rows({ rows, none }: { rows: Row[]; none: "shop.nothing_goes" | "shop.nothing_stays" }) {
  if (rows.length === 0) return <p>{t(none)}</p>;
  const lists = SHOP_LISTS.filter((list) => rows.some((row) => row.list === list));
  return (
    <ul class="plain">
      {lists.map((list) => (
        <li key={list}>
          <b>{t(`shop.list.${list}`)}</b>: {rows.filter((row) => row.list === list).map((row) => row.title).join(", ")}
        </li>
      ))}
    </ul>
  );
}

/** Invented rows go; one's own stay, and with them the invented ones that they name. */
function removalOf(shop: Shop, invented: Set<string>): Removal {
  const rows = SHOP_LISTS.flatMap((list) => shop[list].map((row) => ({ list, doc: `${list}/${row.id}`, title: titleOf(list, { ...row }) })));
  const named = shop.products.filter(({ id }) => !invented.has(`products/${id}`)).flatMap((one) => [`caramels/${one.caramel_id}`, `chocolates/${one.chocolate_id}`]);
  const goes = rows.filter(({ doc }) => invented.has(doc) && !named.includes(doc));
  return { goes, stays: rows.filter((row) => !goes.includes(row)), name: invented.has("shop/name") };
}

/** Takes rows away; each could be put back, and "Undo" puts back all. */
function empty(shop: Shop, { goes, name }: Removal): Promise<void> {
  const set = (doc: string, field: string, value: unknown): ShopEdit => ({ doc, field, value, basis: "typed" });
  const edits = [...goes.map(({ doc }) => set(doc, "removed", true)), set("shop", "invented", false)];
  const back = [...goes.map(({ doc }) => set(doc, "removed", false)), set("shop", "invented", true)];
  if (!name) return writeEdits(edits, t("shop.emptied"), back);
  return writeEdits([...edits, set("shop", "name", null)], t("shop.emptied"), [...back, { ...set("shop", "name", shop.name), basis: "assumed" }]);
}
