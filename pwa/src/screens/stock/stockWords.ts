import type { Lot } from "../../documents";
import { boughtMaterials } from "../../state";
import { format, formatNumber, t } from "../../text";

export function materialName(material: string): string {
  return boughtMaterials().find((one) => one.material === material)?.name || t("orders.gone");
}

/** "Firm caramel, lot 118". */
export function lotTitle(lot: Lot): string {
  const name = materialName(lot.material);
  if (lot.made_from) return t("stock.left_over", { name });
  return lot.supplier_lot ? t("stock.lot_of", { name, lot: lot.supplier_lot }) : name;
}

/** An amount as its unit has it. */
export function amountWords(amount: number, unit: string): string {
  return unit === "kg" ? format("mass_kg", amount) : formatNumber(amount, 0);
}
