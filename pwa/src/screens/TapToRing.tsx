import { swallowClick } from "../state";
import { t } from "../text";
import { BellSign } from "../ui/icons";

/** In place of the big button while the audio context needs a tap. Any tap on the screen lets it ring; one here does nothing else. */
export function TapToRing() {
  return (
    <button type="button" class="act act-long act-tap" onPointerUp={swallowClick}>
      <BellSign size={44} />
      <span role="alert">{t("screen.tap_to_ring")}</span>
    </button>
  );
}
