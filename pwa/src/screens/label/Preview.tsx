import { useEffect, useState } from "preact/hooks";

import type { Page } from "../../labels/drawing";
import { loadLetters, svg } from "../../labels/svg";

/** A page as it will be printed, as large as it is where the screen has the room. */
export function Preview({ page, label }: { page: Page; label: string }) {
  const [ready, setReady] = useState(false);
  useEffect(() => {
    // Without the letters it is drawn all the same, in those of the system.
    loadLetters()
      .catch((error: unknown) => console.warn("no letters:", error))
      .then(() => setReady(true));
  }, []);
  return ready ? <div class="label-preview" role="img" aria-label={label} dangerouslySetInnerHTML={{ __html: svg(page) }} /> : null;
}
