import type { Shop, Values } from "../../documents";
import { t } from "../../text";
import { CountField } from "../../ui/CountField";

interface Props {
  label: string;
  of: "products" | "materials";
  shop: Shop;
  field: { field: string };
  value: Values[];
  onValue: (field: string, value: unknown) => void;
}

/** So many each of several rows of the shop: what is in a box, or what it is packed in. */
export function Contents({ label, of, shop, field, value, onValue }: Props) {
  const [key, amount] = of === "products" ? ["product_id", "count"] : ["material", "amount"];
  const rows = of === "products" ? shop.products.map((row) => ({ id: row.id, name: row.name })) : shop.materials.filter((row) => row.what === "packaging").map((row) => ({ id: `materials/${row.id}`, name: row.name }));
  const countOf = (id: string) => Number(value.find((one) => one[key!] === id)?.[amount!] ?? 0);
  const set = (id: string, count: number) =>
    onValue(field.field, rows.map((row) => ({ [key!]: row.id, [amount!]: row.id === id ? count : countOf(row.id) })).filter((one) => Number(one[amount!]) > 0));
  return (
    <fieldset class="several">
      <legend>{label}</legend>
      {rows.length === 0 && <p class="field-note">{t(`shop.no_${of}_yet`)}</p>}
      {rows.map((row) => (
        <CountField key={row.id} label={row.name || t("shop.unnamed")} value={countOf(row.id)} least={0} most={1000} onValue={(count) => set(row.id, count)} />
      ))}
    </fieldset>
  );
}
