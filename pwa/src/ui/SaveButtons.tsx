import { useState } from "preact/hooks";

import { t } from "../text";

/** Buttons that save a file each, by the key of their words; it is said when one could not be made. */
export function SaveButtons({ files }: { files: Record<string, () => Promise<unknown>> }) {
  const [failed, setFailed] = useState(false);
  return (
    <>
      <div class="buttons">
        {Object.entries(files).map(([words, save]) => (
          <button key={words} type="button" onClick={() => void save().then(() => setFailed(false), () => setFailed(true))}>
            {t(words)}
          </button>
        ))}
      </div>
      {failed && <p class="card-wrong card">{t("desk.engine_failed")}</p>}
    </>
  );
}
