/** What kinds of batches offer on the page of a row of the shop, by the list it stands in. */
import type { ComponentType } from "preact";

import type { Shop, ShopList, Values } from "../documents";
import type { ShopRow } from "../state";
import { FunnelTool } from "./cluster/FunnelTool";
import { BoxPrice } from "./shared/BoxPrice";
import { StartStandup } from "./standup/StartStandup";

interface Props {
  row: ShopRow;
  shop: Shop;
  /** The row as it is being typed, by field. */
  values: Values;
  onValue: (field: string, value: unknown) => void;
}

export const ROW_TOOLS: { [L in ShopList]?: ComponentType<Props> } = {
  funnels: FunnelTool,
  caramels: StartStandup,
  boxes: BoxPrice,
};
