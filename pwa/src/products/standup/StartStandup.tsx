import type { Shop } from "../../documents";
import type { ShopRow } from "../../state";
import { t } from "../../text";
import { useOpenBatch } from "../shared/OpenBatch";
import { uniqueName } from "../shared/uniqueName";
import { titleOf } from "../shared/rowForms";

/** Begins a stand-up test of a caramel; it runs at the bench as a batch of its own. */
export function StartStandup({ row: caramel, shop: { room_c } }: { row: ShopRow; shop: Shop }) {
  const [waiting, keep] = useOpenBatch();
  const start = () => {
    const name = uniqueName(t("shop.stand_name", { name: titleOf("caramels", caramel) }));
    const head = { name, product_id: null, oven_id: null, base_id: null, lot: null };
    return keep({ kind: "standup", ...head, caramel_id: caramel.id, request: { room_c }, reply: { room_c, inputs: [] } });
  };
  return (
    <button type="button" class="go go-quiet" aria-disabled={waiting} onClick={() => void start()}>
      {t("shop.start_stand")}
    </button>
  );
}
