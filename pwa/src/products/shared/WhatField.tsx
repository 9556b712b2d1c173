import type { Shop } from "../../documents";
import { t } from "../../text";
import { ChoiceField } from "../../ui/fields";
import { named } from "../../ui/named";
import { go } from "../../router";
import { planDraft } from "./planDraft";

/** Stands for a bowl of chocolate among the products. */
export const BOWL = "bowl of chocolate";

interface Props {
  shop: Shop;
  /** A product's id, or BOWL. */
  value: string;
  /** Takes a product where the form in hand can: one made as `kind`; for another its form is opened. */
  onProduct?: (id: string) => void;
  kind?: string;
}

/** What is to be made: a product of the shop, or the chocolate for it. */
export function WhatField({ shop, value, onProduct, kind }: Props) {
  const choose = (id: string) => {
    if (id === value) return;
    if (id === BOWL) return go("/plan/chocolate");
    const made = shop.products.find((one) => one.id === id)?.kind === "cluster" ? "cluster" : "slab";
    if (onProduct && made === kind) return onProduct(id);
    planDraft.product_id = id;
    go(made === "cluster" ? "/plan/clusters" : "/plan");
  };
  return <ChoiceField label={t("desk.product")} value={value} options={[...named(shop.products), { value: BOWL, label: t("desk.bowl_of_chocolate") }]} onValue={choose} />;
}
