import type { PlanLabels, ProductRow, Shop } from "../documents";
import { traitsOf } from "../products/traitRegistry";

/** What a batch contains by the labels of its caramel and chocolate, as its plan keeps it; null: it has none of it.
 * `besides`: what the product's own label has. */
export function labelsOf(shop: Shop, caramel_id: string | null, chocolate_id: string | null, coated = false, besides: string[] = []): PlanLabels {
  const named = [
    ...(caramel_id === null ? [] : [{ list: "caramels" as const, id: caramel_id }]),
    ...(chocolate_id === null ? [] : [{ list: "chocolates" as const, id: chocolate_id }]),
  ];
  const rows = named.map(({ list, id }) => shop[list].find((one) => one.id === id));
  return {
    contains: [...new Set([...rows.flatMap((row) => row?.contains ?? []), ...besides])],
    // A list nobody has filled in says nothing; one that somebody left empty says that there is none.
    labels_known: named.every(({ list, id }) => `${list}/${id}.contains` in shop.basis),
    coated,
  };
}

/** The same for a product: dipped, or with a pre-bottom, it takes chocolate. */
export function labelsOfProduct(shop: Shop, product: ProductRow | undefined): PlanLabels {
  const coated = product !== undefined && (traitsOf(product.kind).coated?.(product) ?? false);
  return labelsOf(shop, product?.caramel_id ?? shop.caramels[0]?.id ?? "", coated ? (product.chocolate_id ?? "") : null, coated, product?.contains);
}
