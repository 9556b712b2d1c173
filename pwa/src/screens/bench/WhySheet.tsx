import type { EventButton } from "../../documents";
import { t } from "../../text";
import { Sheet } from "../../ui/Sheet";
import { Reasons, type Why } from "../Reasons";

/** Asks why before a button counts. */
export function WhySheet({ asked, onTell, onClose }: { asked: EventButton; onTell: (why: Why) => void; onClose: () => void }) {
  return (
    <Sheet title={`${t(asked.code)}: ${t("screen.why")}`} onClose={onClose}>
      <Reasons reasons={asked.reasons ?? []} look="side" onTell={onTell} />
    </Sheet>
  );
}
