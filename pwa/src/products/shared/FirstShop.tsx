import { useState } from "preact/hooks";

import type { Shop } from "../../documents";
import { SHOP_LISTS, takeDemoShop } from "../../state";
import { t } from "../../text";
import { StartEmpty } from "./StartEmpty";
import { Card } from "../../ui/Card";

export function isShopEmpty(shop: Shop): boolean {
  return SHOP_LISTS.every((list) => shop[list].length === 0);
}

/** An empty shop may begin with the invented one; the invented one may give way to one's own.
 * `own`: also the way to fill in one's own, where that is not what one is looking at. */
export function FirstShop({ shop, own = false }: { shop: Shop; own?: boolean }) {
  const [busy, setBusy] = useState(false);
  const doing = (work: () => Promise<void>) => {
    if (busy) return;
    setBusy(true);
    void work().finally(() => setBusy(false));
  };
  if (isShopEmpty(shop))
    return (
      <Card title={t("shop.empty_title")}>
        <p>{t("shop.empty_how")}</p>
        {own && (
          <a class="go" href="/shop">
            {t("shop.set_up")}
          </a>
        )}
        <button type="button" class="go go-quiet" aria-disabled={busy} onClick={() => doing(takeDemoShop)}>
          {t("shop.take_demo")}
        </button>
      </Card>
    );
  return shop.invented ? <StartEmpty shop={shop} /> : null;
}
