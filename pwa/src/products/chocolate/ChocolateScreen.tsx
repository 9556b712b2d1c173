import { useState } from "preact/hooks";

import type { ChocolatePlanReply, PlanLabels, ProblemDocument, Shop, Vessel } from "../../documents";
import type { ChocolatePlanRequest } from "../../engine/types";
import { labelsOf, plan, type PlanAnswer, shop as shopSignal } from "../../state";
import { problemAt } from "../../problems";
import { format, formatDuration, formatRange, t } from "../../text";
import { BasisTable } from "../../ui/BasisTable";
import { Desk } from "../../ui/Desk";
import { ChoiceField, WordsField } from "../../ui/fields";
import { useUnparsableFields } from "../../ui/useUnparsableFields";
import { rowOptions } from "../../ui/rowOptions";
import { FormAndAnswer } from "../shared/FormAndAnswer";
import { type Choice, chocolatesOf, targetsOf } from "../shared/dip";
import { OpenBatch } from "../shared/OpenBatch";
import { uniqueName } from "../shared/uniqueName";
import { PlanNumberField } from "../shared/PlanNumberField";
import { withoutEmpty } from "../shared/request";
import { PlanWarnings } from "../shared/Sentences";
import { PlanCard, type PlanRow } from "../../ui/PlanCard";
import { useAnswer } from "../shared/useAnswer";
import { useKeptForm } from "../shared/useKeptForm";
import { formPrefill } from "../shared/formPrefill";
import { valueOfKind, WhatField } from "../shared/WhatField";
import { Card } from "../../ui/Card";
import { MoreFields } from "../../ui/MoreFields";

interface ChocolateForm {
  chocolate_id: string;
  mass_kg: number | null;
  vessel_id: string;
  room_c: number | null;
  /** Empty: as warm as the room. */
  seed_c: number | null;
  lot: string;
}

const START_KG = 2;

export function ChocolateScreen() {
  const shop = shopSignal.value;
  return (
    <Desk title={t("desk.bowl_of_chocolate")} here="today">
      {shop ? <Planning shop={shop} /> : <p class="card">{t("desk.no_shop_yet")}</p>}
    </Desk>
  );
}

/** As it starts: with the chocolate that a plan of pieces asked for. */
function firstForm(shop: Shop): ChocolateForm {
  const asked = formPrefill.bowl;
  formPrefill.bowl = null;
  const chocolates = chocolatesOf(shop);
  const chocolate = chocolates.find((one) => one.id === asked?.chocolate_id) ?? chocolates[0];
  // To ten grams, upwards: nobody weighs in finer.
  const mass_kg = asked ? Math.ceil(asked.kg * 100) / 100 : START_KG;
  return { chocolate_id: chocolate?.id ?? "", mass_kg, vessel_id: "", room_c: shop.room_c, seed_c: null, lot: "" };
}

function requestOf(form: ChocolateForm, shop: Shop, chocolate: Choice | undefined): ChocolatePlanRequest {
  const vessel = shop.vessels.find((one) => one.id === form.vessel_id);
  const basis: ChocolatePlanRequest["basis"] = form.room_c === shop.room_c && shop.basis["shop.room_c"] ? { room_c: shop.basis["shop.room_c"] } : {};
  return withoutEmpty<ChocolatePlanRequest>({
    chocolate: chocolate?.chocolate,
    targets: chocolate && targetsOf(chocolate),
    mass_kg: form.mass_kg,
    room_c: form.room_c,
    seed_c: form.seed_c,
    bowl: vessel && withoutEmpty<Vessel>({ mass_kg: vessel.mass_kg, heat_capacity_j_kgk: vessel.heat_capacity_j_kgk }),
    basis,
  });
}

function Planning({ shop }: { shop: Shop }) {
  const [asked] = useState(formPrefill.bowl !== null);
  const [form, setForm] = useKeptForm<ChocolateForm>("chocolate", () => firstForm(shop), asked);
  const [unparsable, setParseState] = useUnparsableFields();
  const chocolate = chocolatesOf(shop).find((one) => one.id === form.chocolate_id);
  const ask = (request: ChocolatePlanRequest) => plan("chocolate.plan", request);
  const found = useAnswer(unparsable.length ? null : requestOf(form, shop, chocolate), ask);
  const change = (next: Partial<ChocolateForm>) => setForm((old) => ({ ...old, ...next }));
  const fields = (
    <>
      <WhatField shop={shop} value={valueOfKind("chocolate")} />
      <ChocolateFields form={form} shop={shop} problem={found.problem} onChange={change} onParseState={setParseState} />
    </>
  );
  return (
    <FormAndAnswer fields={fields} unparsable={unparsable.length > 0} found={found}>
      {found.answer && chocolate && <ChocolateAnswerCards answer={found.answer} id={chocolate.id} name={chocolate.name} labels={labelsOf(shop, null, chocolate.id)} lot={form.lot} busy={found.busy} />}
    </FormAndAnswer>
  );
}

interface FieldsProps {
  form: ChocolateForm;
  shop: Shop;
  problem: ProblemDocument | null;
  onChange: (change: Partial<ChocolateForm>) => void;
  onParseState: (name: string, fault: boolean) => void;
}

function ChocolateFields({ form, shop, problem, onChange, onParseState }: FieldsProps) {
  const number = (field: "mass_kg" | "room_c" | "seed_c", note?: string) => (
    <PlanNumberField label={t(`desk.bowl_${field}`)} name={field} value={form[field]} problem={problemAt(problem, field)} note={note} onParseState={onParseState} onValue={(value) => onChange({ [field]: value })} />
  );
  return (
    <>
      <ChoiceField label={t("desk.bowl_chocolate")} value={form.chocolate_id} options={rowOptions(chocolatesOf(shop))} onValue={(chocolate_id) => onChange({ chocolate_id })} />
      {number("mass_kg", t("desk.bowl_mass_note"))}
      {number("room_c")}
      <MoreFields wrong={problem !== null && !["chocolate", "mass_kg", "room_c"].some((field) => problemAt(problem, field))}>
      <WordsField label={t("desk.bowl_lot")} value={form.lot} most={60} onValue={(lot) => onChange({ lot })} />
      <ChoiceField label={t("desk.bowl_vessel")} value={form.vessel_id} options={[{ value: "", label: t("desk.bowl_thin") }, ...rowOptions(shop.vessels)]} onValue={(vessel_id) => onChange({ vessel_id })} />
        {number("seed_c", t("desk.bowl_seed_note"))}
      </MoreFields>
    </>
  );
}

interface CardsProps {
  answer: PlanAnswer<"chocolate.plan">;
  id: string;
  name: string;
  labels: PlanLabels;
  lot: string;
  busy: boolean;
}

/** The bowl in words, and what it rests on. */
function ChocolateAnswerCards({ answer: { request, reply }, id, name, labels, lot, busy }: CardsProps) {
  const head = { name: uniqueName(name), product_id: null, oven_id: null, base_id: null, chocolate_id: id, lot: lot.trim() || null, ...labels };
  return (
    <>
      <div class="plan-first">
        <PlanCard rows={bowlRows(reply)} inputs={reply.inputs}>
          <p class="quiet">{t("desk.bowl_curve", { range: stepRange(reply, "cool") })}</p>
          <PlanWarnings reply={reply} />
        </PlanCard>
        <OpenBatch plan={{ kind: "chocolate", ...head, request, reply }} busy={busy} />
      </div>
      <div class="plan-rest">
        <Card title={t("desk.bowl_off")}>
          {reply.remedies.map((one) => (
            <p key={one.code}>{t(`warning.${one.code}`, one.values as Record<string, unknown>)}</p>
          ))}
        </Card>
        <BasisTable inputs={reply.inputs} />
      </div>
    </>
  );
}

function stepRange({ steps }: ChocolatePlanReply, name: string): string {
  const step = steps.find((one) => one.name === name);
  return step ? formatRange("bowl_c", step.low_c, step.high_c) : "–";
}

/** The morning card of a bowl: melt, seed, work, how long it holds. */
function bowlRows(reply: ChocolatePlanReply): PlanRow[] {
  const { seconds_s, low_s, high_s } = reply.hold;
  return [
    { what: "plan.melt", figure: format("kg", reply.melt_kg), note: t("plan.to", { range: stepRange(reply, "melt") }), rests_on: ["temper.melt_low_c", "targets.melt_low_c"] },
    { what: "plan.seed", figure: format("kg", reply.seed_kg), note: t("plan.seed_note"), rests_on: ["seed_c", "room_c", "bowl.mass_kg"] },
    { what: "plan.work", figure: stepRange(reply, "work"), rests_on: ["targets.work_low_c", "temper.work_low_c"] },
    { what: "plan.holds", figure: formatDuration(seconds_s), note: t("plan.between", { low: formatDuration(low_s), high: formatDuration(high_s) }), rests_on: ["bowl.mass_kg", "temper.crystal_share"] },
  ];
}
