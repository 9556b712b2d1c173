import { swallowClick } from "../state";
import { t } from "../text";
import { BellSign } from "../ui/icons";

/** In place of the big button while a clock runs unheard. Any tap lets it ring; one here does nothing else. */
export function TapToRing() {
  return (
    <button type="button" class="act act-long act-mute" onPointerUp={swallowClick}>
      <BellSign size={44} />
      <span role="alert">{t("screen.tap_to_ring")}</span>
    </button>
  );
}
