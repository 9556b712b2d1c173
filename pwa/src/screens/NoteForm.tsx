import { useId, useState } from "preact/hooks";

import { t } from "../text";

/** The longest note that the log takes (characters). */
const MOST = 2000;

interface Props {
  /** Writes the note; false when the tap did not count (something rang): the words stay. */
  onKeep: (text: string) => Promise<boolean>;
  /** The look of its button: that of a sheet at the bench, or that of the desk. */
  button: "side" | "go go-quiet";
}

/** A few typed words about a batch. */
export function NoteForm({ onKeep, button }: Props) {
  const id = useId();
  const [text, setText] = useState("");
  const [failed, setFailed] = useState(false);
  const keep = async () => {
    try {
      if (await onKeep(text.trim())) setText("");
      setFailed(false);
    } catch {
      setFailed(true);
    }
  };
  return (
    <>
      <div class="field">
        <label for={id}>{t("screen.note")}</label>
        <textarea id={id} rows={4} maxLength={MOST} value={text} onInput={(event) => setText(event.currentTarget.value)} />
      </div>
      <button type="button" class={button} disabled={text.trim() === ""} onClick={() => void keep()}>
        {t("button.keep_note")}
      </button>
      {failed && <p role="alert">{t("desk.cannot_keep")}</p>}
    </>
  );
}
