import { t } from "../../text";
import type { Views } from "../kindViews";
import { ChocolateCards, ChocolateHalves } from "./ChocolateRecord";
import { ChocolateScreen } from "./ChocolateScreen";

export const chocolate: Views<"chocolate"> = {
  Form: ChocolateScreen,
  Cards: ChocolateCards,
  Paper: ChocolateHalves,
  outcome: ({ caramel_kg }) => t("desk.closed_bowl", { melted_kg: caramel_kg }),
};
