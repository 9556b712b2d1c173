import type { Shop } from "../../documents";
import { go } from "../../router";
import { t } from "../../text";
import { ChoiceField } from "../../ui/fields";
import { rowOptions } from "../../ui/rowOptions";
import { KINDS, traitsOf } from "../traitRegistry";
import type { Kind } from "../kindTraits";
import { formPrefill } from "./formPrefill";

/** Stands for a kind that is no product of the shop, such as a bowl of chocolate, among the products. */
export const valueOfKind = (kind: Kind): string => `kind:${kind}`;

interface Props {
  shop: Shop;
  /** A product's id, or a kind by `valueOfKind`. */
  value: string;
  /** Takes a product where the form in hand can: one made as `kind`; for another its form is opened. */
  onProduct?: (id: string) => void;
  kind?: Kind;
}

/** What is to be made: a product of the shop, or something else that can be planned. */
export function WhatField({ shop, value, onProduct, kind }: Props) {
  const others = KINDS.flatMap((one) => {
    const { word } = traitsOf(one);
    return word ? [{ value: valueOfKind(one), label: t(word), kind: one }] : [];
  });
  const choose = (id: string) => {
    if (id === value) return;
    const product = shop.products.find((one) => one.id === id);
    const made = product?.kind ?? others.find((one) => one.value === id)?.kind;
    if (product && onProduct && made === kind) return onProduct(id);
    if (product) formPrefill.product_id = id;
    const route = made && traitsOf(made).route;
    if (route) go(route);
  };
  return <ChoiceField label={t("desk.product")} value={value} options={[...rowOptions(shop.products), ...others]} onValue={choose} />;
}
