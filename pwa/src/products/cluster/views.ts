import type { Views } from "../kindViews";
import { ClusterPicture, hasPicture } from "./ClusterPicture";
import { ClusterCards, ClusterHalves } from "./ClusterRecordViews";
import { ClusterScreen } from "./ClusterScreen";
import { clusterBoxes, ClusterSheet } from "./ClusterSheet";
import { FunnelTool } from "./FunnelTool";

export const cluster: Views<"cluster"> = {
  Form: ClusterScreen,
  hasPicture,
  Picture: ClusterPicture,
  Cards: ClusterCards,
  Paper: ClusterHalves,
  Sheet: ClusterSheet,
  boxes: clusterBoxes,
  onRow: { list: "funnels", Tool: FunnelTool },
};
