import type { ComponentChildren } from "preact";

import { t } from "../text";

/** The inputs that seldom change, folded until somebody wants them or one of them is wrong. */
export function MoreFields({ wrong, children }: { wrong: boolean; children: ComponentChildren }) {
  return (
    <details class="plan-more" open={wrong || undefined}>
      <summary>{t("plan.more_inputs")}</summary>
      {children}
    </details>
  );
}
