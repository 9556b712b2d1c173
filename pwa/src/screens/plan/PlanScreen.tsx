import { useState } from "preact/hooks";

import type { PlanDocument, Shop } from "../../documents";
import { batches, isOpen, openBatch, shop as shopSignal } from "../../state";
import { problemText, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { go } from "../router";
import { canPlan, NotSetUp } from "../shop/NotSetUp";
import { type Change, changed, firstForm, jacketedVessel, measuredBy, type PlanForm, requestOf, withProduct, withVessel } from "./form";
import { PlanAnswer } from "./PlanAnswer";
import { PlanFields } from "./PlanFields";
import { type Answer, useAnswer } from "./useAnswer";

export function PlanScreen() {
  const shop = shopSignal.value;
  return (
    <Desk title={t("desk.plan_title")} here="plan">
      {shop ? canPlan(shop) ? <Planning shop={shop} /> : <NotSetUp shop={shop} /> : <p class="card">{t("desk.no_shop_yet")}</p>}
    </Desk>
  );
}

function Planning({ shop }: { shop: Shop }) {
  const [form, setForm] = useState<PlanForm>(() => firstForm(shop));
  const [unread, setUnread] = useState<string[]>([]);
  const found = useAnswer(unread.length ? null : requestOf(form, shop));
  const change = (next: Change) => setForm((old) => changed(old, next));
  const choose = (id: string) => setForm((old) => withProduct(old, shop, id));
  const melt = (id: string) => setForm((old) => withVessel(old, shop, id));
  const measure = (by: PlanForm["by"]) => setForm((old) => measuredBy(old, by, found.answer?.reply.cut.pieces ?? null));
  const read = (name: string, fault: boolean) =>
    setUnread((old) => (fault ? [...new Set([...old, name])] : old.filter((one) => one !== name)));
  return (
    <div class="sides-by-side">
      <form class="plan-form" onSubmit={(event) => event.preventDefault()}>
        <PlanFields form={form} shop={shop} problem={found.problem} onChange={change} onProduct={choose} onVessel={melt} onBy={measure} onRead={read} />
      </form>
      <div class="plan-answer" aria-live="polite" aria-busy={found.busy}>
        {unread.length > 0 && <p class="card">{t("desk.cannot_read")}</p>}
        {found.failed && <p class="card card-wrong">{t("desk.engine_failed")}</p>}
        {found.problem && <p class="card card-wrong">{problemText(found.problem)}</p>}
        {!found.answer && found.busy && <p class="card">{t("desk.working_out")}</p>}
        {found.answer && (
          <PlanAnswer answer={found.answer}>
            <Keep form={form} shop={shop} found={found} />
          </PlanAnswer>
        )}
      </div>
    </div>
  );
}

/** Tells two open batches of one product apart: "Squares", "Squares B", "Squares C". */
function ownName(name: string): string {
  const open = [...batches.value.values()].filter(isOpen).map((one) => one.plan.name);
  const free = ["", ..."BCDEFGHIJKLMNOPQRSTUVWXYZ"].map((letter) => (letter ? `${name} ${letter}` : name));
  return free.find((one) => !open.includes(one)) ?? name;
}

/** Keeps what is shown, never what is still being computed. */
function Keep({ form, shop, found }: { form: PlanForm; shop: Shop; found: Answer }) {
  const [keeping, setKeeping] = useState(false);
  const keep = async () => {
    if (keeping || found.busy || !found.answer || !found.request) return;
    setKeeping(true);
    const product = shop.products.find((one) => one.id === form.product_id);
    const plan = {
      kind: "slab",
      name: ownName(product?.name ?? t("desk.slab")),
      prebottom: product?.prebottom ?? false,
      product_id: form.product_id || null,
      oven_id: jacketedVessel(form, shop) ? null : form.oven_id || null,
      base_id: form.base_id || null,
      lot: form.lot.trim() || null,
      request: found.request,
      reply: found.answer.reply,
    } as unknown as PlanDocument;
    try {
      go(`/bench/${await openBatch(plan)}`);
    } finally {
      setKeeping(false);
    }
  };
  return (
    <button type="button" class="go" aria-disabled={keeping || found.busy} onClick={() => void keep()}>
      {t("button.keep_and_start")}
    </button>
  );
}
