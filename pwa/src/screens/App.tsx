import { useSignalEffect } from "@preact/signals";
import { useEffect } from "preact/hooks";

import { engine } from "../state";
import { BenchScreen } from "./bench/BenchScreen";
import { HelpScreen } from "./help/HelpScreen";
import { fetchPlaces, Place } from "./Place";
import { followTheme } from "./theme";
import { Ringing } from "./Ringing";
import { followLink, path } from "../router";
import { Speaking } from "./Speaking";
import { InHead } from "../ui/Desk";
import { TodayScreen } from "./today/TodayScreen";
import { WhoIsHere } from "./WhoIsHere";

export function App() {
  useEffect(followTheme, []);
  // The other places come once the bench can work: on a slow line its engine is waited for.
  useSignalEffect(() => {
    if (engine.value !== "starting") void fetchPlaces();
  });
  return (
    <div onClick={followLink}>
      <InHead.Provider value={<WhoIsHere />}>
        <Screen at={path.value} />
      </InHead.Provider>
      <Ringing />
      <Speaking />
    </div>
  );
}

/** The bench and first aid are here from the start, every other place when it has been fetched. */
function Screen({ at }: { at: string }) {
  const [, place, id] = at.split("/");
  switch (place) {
    case "":
      return <TodayScreen />;
    case "bench":
      return <BenchScreen batchId={id ?? ""} key={id} />;
    case "help":
      return <HelpScreen />;
    default:
      return <Place at={at} />;
  }
}
