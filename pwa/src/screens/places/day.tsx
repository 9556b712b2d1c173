import { DayScreen } from "../day/DayScreen";

export { DayStrip } from "../day/DayStrip";

/** /day. */
export function Screen() {
  return <DayScreen />;
}
