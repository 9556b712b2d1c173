import { t } from "../../text";
import { lastChange, undoLastChange } from "./shopEdits";

/** Says what was changed last, and takes it back. */
export function LastChange() {
  const last = lastChange.value;
  return (
    <div role="status">
      {last && (
        <p class="card changed">
          <span>{last.words}</span>
          <button type="button" onClick={() => void undoLastChange()}>
            {t("shop.take_back")}
          </button>
        </p>
      )}
    </div>
  );
}
