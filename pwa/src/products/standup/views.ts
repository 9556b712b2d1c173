import { t } from "../../text";
import type { Views } from "../kindViews";
import { StandupCard } from "./StandupCard";
import { StartStandup } from "./StartStandup";

export const standup: Views<"standup"> = {
  Cards: StandupCard,
  Paper: StandupCard,
  outcome: () => t("desk.closed_standup"),
  onRow: { list: "caramels", Tool: StartStandup },
};
