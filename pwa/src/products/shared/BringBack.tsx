import { useEffect, useState } from "preact/hooks";

import type { Shop, ShopEdit } from "../../documents";
import { editsBack, editShop } from "../../state";
import { t } from "../../text";
import { lastChange } from "./shopEdits";

/** The invented shop that was taken away can be brought back, on another day too. */
export function BringBack({ shop }: { shop: Shop }) {
  const [back, setBack] = useState<ShopEdit[]>([]);
  useEffect(() => void editsBack().then(setBack), [shop]);
  if (back.length === 0 || lastChange.value) return null;
  return (
    <p class="card changed">
      <span>{t("shop.emptied")}</span>
      <button type="button" onClick={() => void editShop(back)}>
        {t("shop.bring_back")}
      </button>
    </p>
  );
}
