import type { Shop } from "../../documents";
import { learnRequest } from "./clusterForm";
import { FunnelGuide } from "./FunnelGuide";

/** On a funnel's page: what ten clusters weigh, for the products that it lays. */
export function FunnelTool({ shop }: { shop: Shop }) {
  const laid = shop.products.filter((one) => one.kind === "cluster").map((product) => ({ product, planned: learnRequest(product, shop) }));
  return <FunnelGuide laid={laid} shop={shop} />;
}
