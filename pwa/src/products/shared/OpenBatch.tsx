import { useState } from "preact/hooks";

import type { PlanDocument, ProductRow } from "../../documents";
import { keepHalfMade, openBatch } from "../../state";
import { t } from "../../text";
import { hasSheet } from "../traitRegistry";
import { go } from "../../router";
import { PlanChocolateButton, type Dip } from "./DipSentences";

/** Whether one has to wait, and what opens a batch of a plan, once, and goes on with it: at the bench, or on paper. */
export function useOpenBatch(busy = false): [boolean, (plan: PlanDocument | null, sheet?: boolean) => Promise<void>] {
  const [keeping, setKeeping] = useState(false);
  const waiting = keeping || busy;
  const keep = async (plan: PlanDocument | null, sheet = false) => {
    if (waiting || !plan) return;
    setKeeping(true);
    try {
      const id = await openBatch(plan);
      keepHalfMade(plan.kind, null);
      go(sheet ? `/batches/${id}/sheet` : `/bench/${id}`);
    } finally {
      setKeeping(false);
    }
  };
  return [waiting, keep];
}

interface Props {
  plan: PlanDocument | null;
  /** What is shown is still being computed: it is not kept. */
  busy: boolean;
  product?: ProductRow | undefined;
  dip?: Dip | null | undefined;
  /** Shows the plan as a printed page. */
  onPage?: () => void;
}

/** Keeps a plan and begins, or takes it along on paper. */
export function OpenBatch({ plan, busy, product, dip, onPage }: Props) {
  const [waiting, keep] = useOpenBatch(busy);
  return (
    <>
      <button type="button" class="go" aria-disabled={waiting} onClick={() => void keep(plan)}>
        {t("button.keep_and_start")}
      </button>
      {product && <PlanChocolateButton product={product} dip={dip} />}
      {onPage && (
        <div class="buttons">
          <button type="button" onClick={onPage}>
            {t("button.plan_page")}
          </button>
          {plan && hasSheet(plan) && (
            <button type="button" aria-disabled={waiting} onClick={() => void keep(plan, true)}>
              {t("button.keep_as_sheet")}
            </button>
          )}
        </div>
      )}
    </>
  );
}
