import { useId, useState } from "preact/hooks";

import { t } from "../text";

/** Why something was done: a word of the engine's, and the same in one's own words. */
export interface Why {
  reason: string;
  text: string;
}

/** The longest that the log takes (characters). */
const MOST = 200;

interface Props {
  reasons: string[];
  /** The look of a button: that of a sheet at the bench, or that of the desk. */
  look: "side" | "go go-quiet";
  onTell: (why: Why) => void;
}

/** Reasons, one tap each; "another reason" may be said in one's own words. */
export function Reasons({ reasons, look, onTell }: Props) {
  const id = useId();
  const [text, setText] = useState("");
  return (
    <>
      {reasons.map((reason) => (
        <button key={reason} type="button" class={look} onClick={() => onTell({ reason, text: reason === "other" ? text.trim() : "" })}>
          {t(`why.${reason}`)}
        </button>
      ))}
      {reasons.includes("other") && (
        <div class="field">
          <label for={id}>{t("screen.why_words")}</label>
          <textarea id={id} rows={2} maxLength={MOST} value={text} onInput={(event) => setText(event.currentTarget.value)} />
        </div>
      )}
    </>
  );
}

/** A reason as it is read later. */
export function whyWords({ reason, text }: { reason: string | null; text: string }): string {
  return text || t(`why.${reason ?? "none"}`);
}
