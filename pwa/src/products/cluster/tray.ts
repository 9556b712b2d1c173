import type { ClusterPlan } from "../../documents";
import type { TrayPlan } from "../../ui/pictures/TrayMap";

/** Clusters of each size, in laying order. */
export type Sizes = ClusterPlan["reply"]["sizes"];

/** A full tray, or one with its own sizes; where they differ, the first tray. Plans of long ago know of none. */
export function trayOf({ request, reply }: Pick<ClusterPlan, "request" | "reply">, sizes: Sizes | undefined = reply.by_tray?.[0]?.sizes): TrayPlan {
  const { length_m, width_m } = request.tray;
  const across = sizes?.flatMap(({ clusters, spread_m }) => Array<number>(clusters).fill(spread_m));
  const positions_m = reply.positions_m.slice(0, across?.length).map(([x = 0, y = 0], place) => [x, y, across?.[place] ?? request.spread_m]);
  return { length_m, width_m, positions_m, pattern: reply.pattern };
}
