import { useEffect } from "preact/hooks";

import type { Shop, ShopList } from "../../documents";
import { decideSetAside, shop as shopSignal, SHOP_LISTS, type ShopRow, sync } from "../../state";
import { t } from "../../text";
import { Desk } from "../../ui/Desk";
import { SetAside } from "../SetAside";
import { LearnedLink } from "../learned/LearnedLink";
import { BringBack } from "../../products/shared/BringBack";
import { FirstShop } from "../../products/shared/FirstShop";
import { LastChange } from "../../products/shared/LastChange";
import { NEEDED_LISTS } from "../../products/shared/NotSetUp";
import { detailOf, titleOf } from "../../products/shared/rowForms";
import { lastChange } from "../../products/shared/shopEdits";
import { RowForm } from "./RowForm";

/** /shop, /shop/<list>, /shop/<list>/<id or "new">, /shop/shop. */
export function ShopScreen({ list, id }: { list: string | undefined; id: string | undefined }) {
  const shop = shopSignal.value;
  const known = SHOP_LISTS.find((one) => one === list);
  // A change is taken back where it was made, not on another day.
  useEffect(() => () => void (lastChange.value = null), []);
  if (!shop)
    return (
      <Framed title={t("shop.title")}>
        <p class="card">{t("desk.no_shop_yet")}</p>
        <OfThisPhone />
      </Framed>
    );
  if (list === "shop") return <RowForm list="shop" id="shop" shop={shop} />;
  if (known && id) return <RowForm key={`${known}/${id}`} list={known} id={id} shop={shop} />;
  if (known) return <List list={known} shop={shop} />;
  return <Overview shop={shop} />;
}

function OfThisPhone() {
  return (
    <a class="row-link" href="/settings">
      <b>{t("desk.place_settings")}</b>
      <span>{t("settings.what")}</span>
    </a>
  );
}

function Framed({ title, children }: { title: string; children: preact.ComponentChildren }) {
  return (
    <Desk title={title} here="shop">
      {(sync.value.role === "bench" || sync.value.role === "reader") && <p class="card card-wrong">{t("phones.shop_of_owner")}</p>}
      {children}
    </Desk>
  );
}

function Overview({ shop }: { shop: Shop }) {
  const missing = NEEDED_LISTS.filter((list) => shop[list].length === 0);
  return (
    <Framed title={t("shop.title")}>
      <p class="lead">{t(missing.length > 0 ? "shop.what_for" : "shop.what_for_filled")}</p>
      <LastChange />
      <FirstShop shop={shop} />
      <BringBack shop={shop} />
      <ul class="rows">
        <li>
          <OfThisPhone />
        </li>
        <li>
          <a class="row-link" href="/shop/shop">
            <b>{t("shop.the_shop")}</b>
            <span>{titleOf("shop", { ...shop })}</span>
          </a>
        </li>
        {SHOP_LISTS.map((list) => (
          <li key={list}>
            <a class="row-link" href={`/shop/${list}`}>
              <b>{t(`shop.list.${list}`)}</b>
              <span>{summaryOf(shop, list)}</span>
            </a>
          </li>
        ))}
        <li>
          <LearnedLink />
        </li>
      </ul>
      <SetAside events={sync.value.setAside} decide={decideSetAside} />
      {missing.length === 0 && (
        <a class="go" href="/plan">
          {t("desk.plan_slab")}
        </a>
      )}
    </Framed>
  );
}

function summaryOf(shop: Shop, list: ShopList): string {
  const titles = shop[list].map((row) => titleOf(list, { ...row }));
  if (titles.length > 0) return titles.join(", ");
  return t(NEEDED_LISTS.includes(list) ? "shop.needed" : "shop.none_yet");
}

function List({ list, shop }: { list: ShopList; shop: Shop }) {
  const rows: ShopRow[] = shop[list];
  return (
    <Framed title={t(`shop.list.${list}`)}>
      <p class="lead">{t(`shop.about.${list}`)}</p>
      <LastChange />
      <ul class="rows">
        {rows.map((row) => (
          <li key={row.id}>
            <a class="row-link" href={`/shop/${list}/${row.id}`}>
              <b>{titleOf(list, row)}</b>
              <span>{detailOf(list, row)}</span>
            </a>
          </li>
        ))}
      </ul>
      <a class="go" href={`/shop/${list}/new`}>
        {t(`shop.add.${list}`)}
      </a>
      <a class="go go-quiet" href="/shop">
        {t("shop.back_to_shop")}
      </a>
    </Framed>
  );
}
