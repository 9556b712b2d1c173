import { useState } from "preact/hooks";

import type { ClusterPlanRequest, ProblemDocument, ProductRow, Shop } from "../../documents";
import { labelsOfProduct, plan, shop as shopSignal, withMeasured } from "../../state";
import { problemAt } from "../../problems";
import { t } from "../../text";
import { Desk } from "../../ui/Desk";
import { ChoiceField, SwitchField, WordsField } from "../../ui/fields";
import { useUnparsableFields } from "../../ui/useUnparsableFields";
import { rowOptions } from "../../ui/rowOptions";
import { type ClusterPage, ClusterPaper } from "./ClusterPaper";
import { FormAndAnswer } from "../shared/FormAndAnswer";
import { ClusterAnswerCards } from "./ClusterAnswerCards";
import { type ClusterForm, clusterParts, clusterRequest, firstClusters, withClusters } from "./clusterForm";
import { changed } from "../shared/meltRequest";
import { uniqueName } from "../shared/uniqueName";
import { OldCaramelFields } from "../shared/OldCaramelFields";
import { PlanNumberField } from "../shared/PlanNumberField";
import { type FieldsProps, SizeFields } from "./SizeFields";
import { useAnswer } from "../shared/useAnswer";
import { formPrefill, usePrefilled, usePrefilledPieces } from "../shared/formPrefill";
import { useKeptForm } from "../shared/useKeptForm";
import { MoreFields } from "../../ui/MoreFields";
import { WhatField } from "../shared/WhatField";

export function ClusterScreen() {
  const shop = shopSignal.value;
  const products = shop ? productsOf(shop) : [];
  const first = products.find((one) => one.id === formPrefill.product_id) ?? products[0];
  const [page, setPage] = useState<ClusterPage | null>(null);
  return (
    <>
      {/* Its form stays as it is while the page is looked at. */}
      <div hidden={page !== null}>
        <Desk title={t("desk.clusters")} here="today">
          {shop && first ? <Planning shop={shop} first={first} onPage={setPage} /> : <p class="card">{t("desk.no_shop_yet")}</p>}
        </Desk>
      </div>
      {page && <ClusterPaper {...page} onClose={() => setPage(null)} />}
    </>
  );
}

const productsOf = (shop: Shop) => shop.products.filter((one) => one.kind === "cluster");

function Planning({ shop, first, onPage }: { shop: Shop; first: ProductRow; onPage: (page: ClusterPage) => void }) {
  const asked = usePrefilled();
  const [form, setForm] = useKeptForm<ClusterForm>("cluster", ({ product_id }) => firstClusters(shop, productsOf(shop).find((one) => one.id === product_id) ?? first), asked);
  usePrefilledPieces((clusters) => setForm((old) => ({ ...old, by: "pieces", sizes: old.sizes.slice(0, 1).map((one) => ({ ...one, clusters })) })));
  const [unparsable, setParseState] = useUnparsableFields();
  const parts = clusterParts(form, shop);
  const ask = (request: ClusterPlanRequest) => plan("cluster.plan", request, { measured: (typed) => withMeasured("cluster.plan", typed, parts) });
  const found = useAnswer(unparsable.length ? null : clusterRequest(form, shop), ask, parts);
  const change = (next: Partial<ClusterForm>) => setForm((old) => changed(old, next));
  const product = shop.products.find((one) => one.id === form.product_id);
  const choose = (id: string) => {
    const next = shop.products.find((one) => one.id === id);
    if (next) setForm((old) => withClusters(old, next));
  };
  const show = () => found.answer && product && onPage({ answer: found.answer, name: uniqueName(product.name), lot: form.lot.trim(), ...labelsOfProduct(shop, product) });
  return (
    <FormAndAnswer
      fields={
        <>
          <WhatField shop={shop} value={form.product_id} onProduct={choose} kind="cluster" />
          <ClusterFields form={form} shop={shop} problem={found.problem} onChange={change} onParseState={setParseState} />
        </>
      }
      unparsable={unparsable.length > 0}
      found={found}
    >
      {found.answer && product && <ClusterAnswerCards answer={found.answer} form={form} parts={parts} product={product} labels={labelsOfProduct(shop, product)} busy={found.busy} onPage={show} />}
    </FormAndAnswer>
  );
}

type Quantity = "second_kg" | "spread_m" | "gap_m" | "room_c" | "humidity" | "start_c";

/** Whether what is wrong stands among the folded fields. */
function isFolded(problem: ProblemDocument | null): boolean {
  return problem !== null && !/^(rows|clusters|deposit_kg|caramel_kg|room_c)/.test(problem.field);
}

function ClusterFields(props: FieldsProps) {
  const { form, shop, problem, onChange, onParseState } = props;
  const number = (field: Quantity, label: string, note?: string) => (
    <PlanNumberField key={field} label={t(label)} name={field} value={form[field]} problem={problemAt(problem, field)} note={note} onParseState={onParseState} onValue={(value) => onChange({ [field]: value })} />
  );
  const one = (name: "tray_id" | "funnel_id" | "oven_id" | "vessel_id", label: string, rows: { id: string; name: string }[], none: string) => {
    const options = rows.length ? rowOptions(rows) : [{ value: "", label: t(none) }];
    return <ChoiceField label={t(label)} value={form[name]} options={options} onValue={(id) => onChange({ [name]: id })} />;
  };
  return (
    <>
      <SwitchField
        legend={t("desk.how_much")}
        value={form.by}
        options={(["pieces", "kg"] as const).map((value) => ({ value, label: t(`desk.cluster_by_${value}`) }))}
        onValue={(by) => onChange({ by: by as ClusterForm["by"] })}
      />
      <SizeFields {...props} />
      {number("room_c", "desk.field_room_c")}
      <MoreFields wrong={isFolded(problem)}>
      {number("second_kg", "desk.cluster_second_kg", t("desk.cluster_second_note"))}
      <OldCaramelFields {...props} />
      <WordsField label={t("desk.lot")} value={form.lot} most={60} onValue={(lot) => onChange({ lot })} />
      <div class="pair">
        {number("spread_m", "desk.cluster_spread_m")}
        {number("gap_m", "desk.cluster_gap_m")}
      </div>
      {one("tray_id", "desk.cluster_tray", shop.trays, "desk.cluster_no_tray")}
      {one("funnel_id", "desk.cluster_funnel", shop.funnels, "desk.cluster_no_funnel")}
      {one("vessel_id", "desk.vessel", shop.vessels.filter((row) => !row.jacketed), "desk.none_in_shop")}
      {one("oven_id", "desk.oven", shop.ovens, "desk.none_in_shop")}
      <div class="pair">
        {number("humidity", "desk.field_humidity")}
        {number("start_c", "desk.field_start_c")}
      </div>
      </MoreFields>
    </>
  );
}
