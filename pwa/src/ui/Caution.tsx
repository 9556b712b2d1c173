import type { Caution as Advised } from "../documents";
import { t } from "../text";
import { AlertSign } from "./icons";

/** A safety message: signal word on its colour with its sign (ISO 3864-2, ANSI Z535.4), then the sentence.
 * NOTICE is not about injury and carries no alert sign. */
export function Caution({ word, code, values }: Advised) {
  return (
    <p class={`caution caution-${word.toLowerCase()}`} role="note">
      <b>
        {word !== "NOTICE" && <AlertSign size={22} />}
        {t(`signal.${word.toLowerCase()}`)}
      </b>
      <span>{t(code, values)}</span>
    </p>
  );
}
