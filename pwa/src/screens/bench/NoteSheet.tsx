import { useId, useState } from "preact/hooks";

import { t } from "../../text";
import { Sheet } from "../../ui/Sheet";

/** The longest note that the log takes (characters). */
const MOST = 2000;

/** A few typed words about this batch. */
export function NoteSheet({ onKeep, onClose }: { onKeep: (text: string) => Promise<boolean>; onClose: () => void }) {
  const id = useId();
  const [text, setText] = useState("");
  const keep = async () => {
    if (await onKeep(text.trim())) onClose();
  };
  return (
    <Sheet title={t("screen.note_title")} onClose={onClose}>
      <div class="field">
        <label for={id}>{t("screen.note")}</label>
        <textarea id={id} rows={4} maxLength={MOST} value={text} onInput={(event) => setText(event.currentTarget.value)} />
      </div>
      <button type="button" class="side" disabled={text.trim() === ""} onClick={() => void keep()}>
        {t("button.keep_note")}
      </button>
    </Sheet>
  );
}
