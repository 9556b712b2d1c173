/** What kinds of batches offer on the page of a row of the shop, by the list it stands in. */
import type { ComponentType } from "preact";

import type { Shop, ShopList } from "../documents";
import type { ShopRow } from "../state";
import { FunnelTool } from "./cluster/FunnelTool";
import { StartStandup } from "./standup/StartStandup";

export const ROW_TOOLS: { [L in ShopList]?: ComponentType<{ row: ShopRow; shop: Shop }> } = {
  funnels: FunnelTool,
  caramels: StartStandup,
};
