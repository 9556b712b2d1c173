import { t } from "../../text";
import { lastChange, takeBack } from "./lastChange";

/** Says what was changed last, and takes it back. */
export function Changed() {
  const last = lastChange.value;
  return (
    <div role="status">
      {last && (
        <p class="card changed">
          <span>{last.words}</span>
          <button type="button" onClick={() => void takeBack()}>
            {t("shop.take_back")}
          </button>
        </p>
      )}
    </div>
  );
}
