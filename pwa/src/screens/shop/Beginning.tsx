import { useState } from "preact/hooks";

import type { Shop, ShopEdit } from "../../documents";
import { SHOP_LISTS, takeDemoShop } from "../../state";
import { t } from "../../text";
import { change } from "./lastChange";

export function isEmpty(shop: Shop): boolean {
  return SHOP_LISTS.every((list) => shop[list].length === 0);
}

/** An empty shop may begin with the invented one; the invented one may give way to one's own.
 * `own`: also the way to fill in one's own, where that is not what one is looking at. */
export function Beginning({ shop, own = false }: { shop: Shop; own?: boolean }) {
  const [busy, setBusy] = useState(false);
  const doing = (work: () => Promise<void>) => {
    if (busy) return;
    setBusy(true);
    void work().finally(() => setBusy(false));
  };
  if (isEmpty(shop))
    return (
      <section class="card">
        <h2>{t("shop.empty_title")}</h2>
        <p>{t("shop.empty_how")}</p>
        {own && (
          <a class="go" href="/shop">
            {t("shop.set_up")}
          </a>
        )}
        <button type="button" class="go go-quiet" aria-disabled={busy} onClick={() => doing(takeDemoShop)}>
          {t("shop.take_demo")}
        </button>
      </section>
    );
  if (!shop.invented) return null;
  return (
    <section class="card">
      <h2>{t("shop.invented_title")}</h2>
      <p>{t("shop.invented_how")}</p>
      <button type="button" class="go go-quiet" aria-disabled={busy} onClick={() => doing(() => empty(shop))}>
        {t("shop.start_empty")}
      </button>
    </section>
  );
}

/** Takes every row away; each could be put back, and "Undo" puts back all. */
function empty(shop: Shop): Promise<void> {
  const docs = SHOP_LISTS.flatMap((list) => shop[list].map((row) => `${list}/${row.id}`));
  const set = (doc: string, field: string, value: unknown): ShopEdit => ({ doc, field, value, basis: "typed" });
  const edits = [...docs.map((doc) => set(doc, "removed", true)), set("shop", "invented", false), set("shop", "name", null)];
  const back = [
    ...docs.map((doc) => set(doc, "removed", false)),
    set("shop", "invented", true),
    set("shop", "name", shop.name),
  ];
  return change(edits, t("shop.emptied"), back);
}
