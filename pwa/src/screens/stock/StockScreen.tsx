import { useEffect, useState } from "preact/hooks";

import type { Lot, LotLeft, StockOverviewReply } from "../../documents";
import { boughtMaterials, loadTrade, lots, shop, stockOverview, stockUses } from "../../state";
import { formatDayOf, t } from "../../text";
import { Section } from "../../ui/Card";
import { Desk } from "../../ui/Desk";
import { WordsField } from "../../ui/fields";
import { LongList } from "../../ui/LongList";
import { ListFiles } from "../ListFiles";
import { DeliveryForm } from "./DeliveryForm";
import { LotPage } from "./LotPage";
import { amountWords, lotTitle, materialName } from "./stockWords";

/** From here on a list is searched, not read. */
const FEW = 8;

/** What is there, what does not add up, what to buy; beside or instead of it one lot, or a delivery. */
export function StockScreen({ id }: { id: string | undefined }) {
  const [loaded, setLoaded] = useState(false);
  const [seen, setSeen] = useState<StockOverviewReply | null>(null);
  useEffect(() => void loadTrade().then(() => setLoaded(true)), []);
  useEffect(() => {
    if (loaded) stockOverview().then(setSeen).catch((error: unknown) => console.error("stock:", error));
  }, [loaded, lots.value, stockUses.value, shop.value]);
  const lot = id && id !== "new" ? lots.value.get(id) : undefined;
  const row = seen?.lots.find((one) => one.lot_id === id);
  const title = id === "new" ? t("stock.new") : lot ? lotTitle(lot) : t("desk.place_stock");
  return (
    <Desk title={title} here="stock">
      <div class={id ? "two-panes one-open" : "two-panes"}>
        <StockList loaded={loaded} seen={seen} open={id} />
        {id === "new" && <DeliveryForm />}
        {lot && <LotPage key={lot.id} lot={lot} row={row} />}
        {id && id !== "new" && loaded && !lot && <p class="card">{t("stock.not_here")}</p>}
      </div>
    </Desk>
  );
}

function StockList({ loaded, seen, open }: { loaded: boolean; seen: StockOverviewReply | null; open: string | undefined }) {
  const [sought, setSought] = useState("");
  const low = (seen?.materials ?? []).filter((one) => one.is_low);
  const isFound = (row: LotLeft) => wordsOf(row, lots.value.get(row.lot_id)).includes(sought.toLocaleLowerCase());
  const shown = (seen?.lots ?? []).filter(isFound);
  const openLots = shown.filter((row) => row.is_open || row.differences.length > 0);
  const used = shown.filter((row) => !row.is_open && row.differences.length === 0);
  return (
    <div class="pane-list">
      <a class="go" href="/stock/new">
        {t("stock.new")}
      </a>
      {loaded && lots.value.size === 0 && <p class="card">{t("stock.none")}</p>}
      {lots.value.size > FEW && <WordsField label={t("stock.seek")} value={sought} most={60} onValue={setSought} />}
      <LongList all={openLots} card={(row) => <LotCard key={row.lot_id} row={row} open={row.lot_id === open} />} />
      {low.length > 0 && (
        <Section title={t("stock.buy")}>
          <ul class="plain">
            {low.map((one) => (
              <li key={one.material}>{t("stock.buy_line", { material: materialName(one.material), left: amountWords(one.left, one.unit), lowest: amountWords(one.lowest ?? 0, one.unit) })}</li>
            ))}
          </ul>
        </Section>
      )}
      {used.length > 0 && (
        <details class="card">
          <summary>{t("stock.used_up", { n: used.length })}</summary>
          <LongList all={used} card={(row) => <LotCard key={row.lot_id} row={row} open={row.lot_id === open} />} />
        </details>
      )}
      {boughtMaterials().length === 0 && <p class="card">{t("shop.no_caramels_yet")} <a href="/shop/caramels/new">{t("shop.add.caramels")}</a></p>}
      <ListFiles place="lots" />
    </div>
  );
}

function wordsOf(row: LotLeft, lot: Lot | undefined): string {
  return `${materialName(row.material)} ${lot?.supplier_lot ?? ""} ${lot?.supplier ?? ""}`.toLocaleLowerCase();
}

function LotCard({ row, open }: { row: LotLeft; open: boolean }) {
  const lot = lots.value.get(row.lot_id);
  return (
    <li>
      <a class="card batch-card" href={`/stock/${row.lot_id}`} aria-current={open ? "true" : undefined}>
        <b>{lot ? lotTitle(lot) : t("stock.not_here")}</b>
        <span>{t("stock.left", { left: amountWords(row.left, row.unit) })}</span>
        {row.best_by && <span>{t("stock.best_by", { day: formatDayOf(row.best_by) })}</span>}
        {row.is_past && <strong class="card-late">{t("stock.past")}</strong>}
        {row.differences.map((one) => (
          <strong class="card-late" key={one}>
            {t(`stock.differs_${one}`)}
          </strong>
        ))}
      </a>
    </li>
  );
}
