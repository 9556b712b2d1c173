import { useState } from "preact/hooks";

import { openBatch, type ShopRow } from "../../state";
import { t } from "../../text";
import { ownName } from "../plan/ownName";
import { go } from "../router";
import { titleOf } from "./forms";

/** Begins a stand-up test of a caramel; it runs at the bench as a batch of its own. */
export function StartStand({ caramel, room_c }: { caramel: ShopRow; room_c: number }) {
  const [starting, setStarting] = useState(false);
  const start = async () => {
    if (starting) return;
    setStarting(true);
    const name = ownName(t("shop.stand_name", { name: titleOf("caramels", caramel) }));
    const head = { name, product_id: null, oven_id: null, base_id: null, lot: null };
    try {
      const plan = { kind: "standup" as const, ...head, caramel_id: caramel.id, request: { room_c }, reply: { room_c, inputs: [] } };
      go(`/bench/${await openBatch(plan)}`);
    } finally {
      setStarting(false);
    }
  };
  return (
    <button type="button" class="go go-quiet" aria-disabled={starting} onClick={() => void start()}>
      {t("shop.start_stand")}
    </button>
  );
}
