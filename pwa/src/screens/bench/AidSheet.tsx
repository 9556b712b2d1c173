import { t } from "../../text";
import { FirstAid } from "../../ui/FirstAid";
import { Sheet } from "../../ui/Sheet";

export function AidSheet({ onClose }: { onClose: () => void }) {
  return (
    <Sheet title={t("aid.title")} onClose={onClose}>
      <FirstAid />
    </Sheet>
  );
}
