import { useEffect } from "preact/hooks";

import { t } from "../text";
import { Desk } from "../ui/Desk";
import { BatchesScreen } from "./batches/BatchesScreen";
import { BenchScreen } from "./bench/BenchScreen";
import { HelpScreen } from "./help/HelpScreen";
import { KINDS, traitsOf } from "../products/traitRegistry";
import { viewsOf } from "../products/viewRegistry";
import { followTheme } from "./theme";
import { LearnedScreen } from "./learned/LearnedScreen";
import { RecordScreen } from "./record/RecordScreen";
import { Ringing } from "./Ringing";
import { followLink, path } from "../router";
import { Speaking } from "./Speaking";
import { SettingsScreen } from "./settings/SettingsScreen";
import { ShopScreen } from "./shop/ShopScreen";
import { TodayScreen } from "./today/TodayScreen";

export function App() {
  useEffect(followTheme, []);
  return (
    <div onClick={followLink}>
      <Screen at={path.value} />
      <Ringing />
      <Speaking />
    </div>
  );
}

function Screen({ at }: { at: string }) {
  const [, place, id, row] = at.split("/");
  switch (place) {
    case "":
      return <TodayScreen />;
    case "plan":
      return <FormAt at={at} />;
    case "bench":
      return <BenchScreen batchId={id ?? ""} key={id} />;
    case "batches":
      return id ? <RecordScreen batchId={id} part={row} key={`${id} ${row === "type"}`} /> : <BatchesScreen />;
    case "help":
      return <HelpScreen />;
    case "shop":
      return <ShopScreen list={id} id={row} />;
    case "learned":
      return <LearnedScreen />;
    case "settings":
      return <SettingsScreen />;
    default:
      return <Desk title={t("desk.not_found")} here="" />;
  }
}

/** The form of the kind that has this address; of the first kind where none has. */
function FormAt({ at }: { at: string }) {
  const { Form } = viewsOf(KINDS.find((kind) => traitsOf(kind).route === at) ?? KINDS[0]!);
  return Form && <Form />;
}
