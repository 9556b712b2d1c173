import { useState } from "preact/hooks";

import type { Shop, SlabPlan, SlabPlanRequest } from "../../documents";
import { labelsOfProduct, plan as planOf, type PlanAnswer, shop as shopSignal, withMeasured } from "../../state";
import { t } from "../../text";
import { Desk } from "../../ui/Desk";
import { useUnparsableFields } from "../../ui/useUnparsableFields";
import { canPlan, NotSetUp } from "../shared/NotSetUp";
import { FormAndAnswer } from "../shared/FormAndAnswer";
import { changed } from "../shared/meltRequest";
import { type Change, firstForm, measuredBy, ovenAndBaseOf, requestOf, type SlabForm, withProduct, withVessel } from "./slabForm";
import { type SlabPage, SlabPaper } from "./SlabPaper";
import { OpenBatch } from "../shared/OpenBatch";
import { SlabAnswerCards } from "./SlabAnswerCards";
import { SlabFields } from "./SlabFields";
import { asFirst } from "../shared/series";
import { uniqueName } from "../shared/uniqueName";
import { type Answer, useAnswer } from "../shared/useAnswer";
import { formPrefill, usePrefilled, usePrefilledPieces } from "../shared/formPrefill";
import { useKeptForm } from "../shared/useKeptForm";

export function SlabScreen() {
  const shop = shopSignal.value;
  const [page, setPage] = useState<SlabPage | null>(null);
  return (
    <>
      {/* Its form stays as it is while the page is looked at. */}
      <div hidden={page !== null}>
        <Desk title={t("desk.plan_title")} here="today">
          {shop ? canPlan(shop) ? <Planning shop={shop} onPage={setPage} /> : <NotSetUp shop={shop} /> : <p class="card">{t("desk.no_shop_yet")}</p>}
        </Desk>
      </div>
      {page && <SlabPaper {...page} onClose={() => setPage(null)} />}
    </>
  );
}

function Planning({ shop, onPage }: { shop: Shop; onPage: (page: SlabPage) => void }) {
  const [asked_id] = useState(formPrefill.product_id);
  const asked = usePrefilled();
  const [form, setForm] = useKeptForm<SlabForm>("slab", ({ product_id = asked_id ?? undefined }) => (product_id ? withProduct(firstForm(shop), shop, product_id) : firstForm(shop)), asked);
  usePrefilledPieces((pieces) => setForm((old) => ({ ...old, by: "pieces", pieces })));
  const [unparsable, setParseState] = useUnparsableFields();
  const parts = ovenAndBaseOf(form, shop);
  const ask = (request: SlabPlanRequest) => planOf("slab.plan", request, { measured: (typed) => withMeasured("slab.plan", typed, parts), server: "slab" });
  const found = useAnswer(unparsable.length ? null : requestOf(form, shop), ask, parts);
  const change = (next: Change) => setForm((old) => changed(old, next));
  const choose = (id: string) => setForm((old) => withProduct(old, shop, id));
  const melt = (id: string) => setForm((old) => withVessel(old, shop, id));
  const plan = planDocument(form, shop, found);
  const product = shop.products.find((one) => one.id === form.product_id);
  const measure = (by: SlabForm["by"]) => setForm((old) => measuredBy(old, by, found.answer?.reply.cut.pieces ?? null));
  return (
    <FormAndAnswer
      fields={<SlabFields form={form} shop={shop} problem={found.problem} onChange={change} onProduct={choose} onVessel={melt} onBy={measure} onParseState={setParseState} />}
      unparsable={unparsable.length > 0}
      found={found}
    >
      {found.answer && (
        <SlabAnswerCards answer={found.answer} per_box={form.per_box}>
          <OpenBatch plan={plan} busy={found.busy} product={product} dip={found.answer.reply.dip} onPage={() => plan && found.answer && onPage({ answer: found.answer, name: plan.name, lot: plan.lot ?? "" })} />
        </SlabAnswerCards>
      )}
    </FormAndAnswer>
  );
}

/** What is kept of a plan; null before there is an answer. */
function planDocument(form: SlabForm, shop: Shop, { answer }: Answer<PlanAnswer<"slab.plan">>): SlabPlan | null {
  if (!answer) return null;
  const product = shop.products.find((one) => one.id === form.product_id);
  return {
    kind: "slab",
    ...asFirst(uniqueName(product?.name ?? t("desk.slab")), answer.reply),
    prebottom: product?.prebottom ?? false,
    finish: product?.finish ?? "plain",
    ...labelsOfProduct(shop, product),
    ...ovenAndBaseOf(form, shop),
    lot: form.lot.trim() || null,
    request: answer.request,
    reply: answer.reply,
  };
}
