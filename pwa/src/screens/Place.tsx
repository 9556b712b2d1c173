import { signal } from "@preact/signals";
import type { ComponentProps, ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";

import { sync } from "../state";
import { loadPlaceTexts, t } from "../text";
import { Desk } from "../ui/Desk";

type Screen = ComponentType<{ at: string }>;
type Load = () => Promise<{ Screen: Screen }>;

const plan: Load = () => import("./places/plan");
const records: Load = () => import("./places/records");
const day: Load = () => import("./places/day");
const orders: Load = () => import("./places/orders");
const stock: Load = () => import("./places/stock");
const label: Load = () => import("./places/label");
const shop: Load = () => import("./places/shop");

/** The places that are fetched after the bench, each as a file of its own, by the first part of an address; and which entry
 * of the foot they belong to. */
const PLACES = new Map<string, { load: Load; here: ComponentProps<typeof Desk>["here"] }>([
  ["plan", { load: plan, here: "today" }],
  ["batches", { load: records, here: "records" }],
  ["packs", { load: records, here: "records" }],
  ["trace", { load: records, here: "records" }],
  ["learned", { load: records, here: "records" }],
  ["day", { load: day, here: "today" }],
  ["orders", { load: orders, here: "orders" }],
  ["stock", { load: stock, here: "stock" }],
  ["label", { load: label, here: "orders" }],
  ["shop", { load: shop, here: "shop" }],
  ["settings", { load: shop, here: "shop" }],
  ["pair", { load: shop, here: "shop" }],
]);

const fetched = signal(new Map<Load, Screen>());

async function fetchPlace(load: Load): Promise<void> {
  if (fetched.value.has(load)) return;
  const [{ Screen }] = await Promise.all([load(), loadPlaceTexts()]);
  fetched.value = new Map(fetched.value).set(load, Screen);
}

/** Fetches every place, so that a tap on the foot is answered at once; one that cannot be had is asked for again when it is opened. */
export async function fetchPlaces(): Promise<void> {
  for (const { load } of PLACES.values()) await fetchPlace(load).catch(() => {});
}

/** The place at an address: its screen, or its frame until that is here. */
export function Place({ at }: { at: string }) {
  const place = PLACES.get(at.split("/")[1] ?? "");
  if (!place) return <Desk title={t("desk.not_found")} here="" />;
  const Screen = fetched.value.get(place.load);
  return Screen ? <Screen at={at} /> : <Coming {...place} />;
}

function Coming({ load, here }: { load: Load; here: ComponentProps<typeof Desk>["here"] }) {
  const [failed, setFailed] = useState(false);
  const ask = (byHand = false) => {
    setFailed(false);
    fetchPlace(load).catch((error: unknown) => {
      console.warn("no screen:", error);
      // Firefox remembers a file that could not be had for as long as the page lives.
      if (byHand && sync.value.reachable) location.reload();
      else setFailed(true);
    });
  };
  useEffect(() => {
    ask();
    const back = () => ask();
    addEventListener("online", back);
    return () => removeEventListener("online", back);
  }, [load]);
  return (
    <Desk title={t(`desk.place_${here}`)} here={here}>
      {failed ? (
        <>
          <p class="card card-wrong" role="alert">
            {t("desk.screen_failed")}
          </p>
          <button type="button" class="go" onClick={() => ask(true)}>
            {t("button.try_again")}
          </button>
        </>
      ) : (
        <p class="quiet">{t("desk.screen_loading")}</p>
      )}
    </Desk>
  );
}
