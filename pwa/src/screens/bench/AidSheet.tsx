import { t } from "../../text";
import { BigButton } from "../../ui/BigButton";
import { FirstAid } from "../../ui/FirstAid";
import { Sheet } from "../../ui/Sheet";

export function AidSheet({ onClose }: { onClose: () => void }) {
  return (
    <Sheet title={t("aid.title")}>
      <FirstAid />
      <div class="sheet-foot">
        <BigButton label={t("button.back_to_batch")} onTap={onClose} />
      </div>
    </Sheet>
  );
}
