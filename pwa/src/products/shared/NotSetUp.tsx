import type { Shop, ShopList } from "../../documents";
import { t } from "../../text";
import { FirstShop, isShopEmpty } from "./FirstShop";

/** What a slab cannot be planned without. */
export const NEEDED_LISTS: ShopList[] = ["ovens", "caramels", "products"];

/** Whether a slab can be planned with what the shop has. */
export function canPlan(shop: Shop): boolean {
  return NEEDED_LISTS.every((list) => shop[list].length > 0);
}

/** Before the first plan there is a shop to set up. */
export function NotSetUp({ shop }: { shop: Shop }) {
  if (isShopEmpty(shop)) return <FirstShop shop={shop} own />;
  return (
    <>
      <p class="card">{t("shop.not_set_up")}</p>
      <a class="go" href="/shop">
        {t("shop.set_up")}
      </a>
    </>
  );
}
