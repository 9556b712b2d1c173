import type { ComponentChildren } from "preact";

import { problemText, t } from "../../text";
import type { Answer } from "./useAnswer";

interface Props<A> {
  fields: ComponentChildren;
  /** Something typed cannot be parsed. */
  unparsable: boolean;
  found: Answer<A>;
  /** The answer, drawn. */
  children: ComponentChildren;
}

/** A form on one side, on the other its answer, or why there is none. */
export function FormAndAnswer<A>({ fields, unparsable, found, children }: Props<A>) {
  return (
    <div class="sides-by-side">
      <form class="plan-form" onSubmit={(event) => event.preventDefault()}>
        {fields}
      </form>
      <div class="plan-answer" aria-live="polite" aria-busy={found.busy}>
        {unparsable && <p class="card">{t("desk.cannot_read")}</p>}
        {found.failed && <p class="card card-wrong">{t("desk.engine_failed")}</p>}
        {found.problem && <p class="card card-wrong">{problemText(found.problem)}</p>}
        {!found.answer && found.busy && <p class="card">{t("desk.working_out")}</p>}
        {children}
      </div>
    </div>
  );
}
