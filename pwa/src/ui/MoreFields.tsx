import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";

import { t } from "../text";

/** The inputs that seldom change, folded until somebody wants them or one of them is wrong; then they stay open. */
export function MoreFields({ wrong, title = t("plan.more_inputs"), children }: { wrong: boolean; title?: string; children: ComponentChildren }) {
  const [open, setOpen] = useState(wrong);
  useEffect(() => {
    if (wrong) setOpen(true);
  }, [wrong]);
  return (
    <details class="plan-more" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {children}
    </details>
  );
}
