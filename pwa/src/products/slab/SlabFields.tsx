import type { ProblemDocument, Shop } from "../../documents";
import { problemAt } from "../../problems";
import { format, t } from "../../text";
import { ChoiceField, SwitchField, WordsField } from "../../ui/fields";
import { rowOptions } from "../../ui/rowOptions";
import { type Change, jacketedVessel, type SlabForm } from "./slabForm";
import { OldCaramelFields } from "../shared/OldCaramelFields";
import { PlanNumberField } from "../shared/PlanNumberField";
import { MoreFields } from "../../ui/MoreFields";
import { WhatField } from "../shared/WhatField";

interface Props {
  form: SlabForm;
  shop: Shop;
  problem: ProblemDocument | null;
  onChange: (change: Change) => void;
  onProduct: (id: string) => void;
  onVessel: (id: string) => void;
  onBy: (by: SlabForm["by"]) => void;
  onParseState: (name: string, fault: boolean) => void;
}

/** Which request fields a form field answers for: a problem is shown where it can be mended. */
const REQUEST_FIELDS: Record<string, string[]> = {
  kg: ["have.kg", "have", "mass_kg"],
  pieces: ["want.pieces", "want"],
  boxes: ["want.boxes"],
  per_box: ["want.per_box"],
  frame_length_m: ["frame.length_m", "frame", "length_m", "trim_m"],
  frame_width_m: ["frame.width_m", "width_m"],
  oven: ["oven", "oven.rated_w", "oven.power_w", "oven.unevenness", "step_s"],
  vessel: ["vessel", "vessel.mass_kg", "vessel.heat_capacity_j_kgk", "vessel_volume_m3"],
  base: ["base", "contact_m2k_w", "bottom"],
  water_c: ["jacket.water_c"],
  thickness_m: ["jacket.thickness_m"],
  chopped_m: ["jacket.chopped_m"],
};

function at(field: string, problem: ProblemDocument | null): ProblemDocument | null {
  return problemAt(problem, field, ...(REQUEST_FIELDS[field] ?? []));
}

/** Whether what is wrong stands among the folded fields. */
function isFolded(problem: ProblemDocument | null): boolean {
  return problem !== null && !["kg", "pieces", "boxes", "per_box", "room_c"].some((field) => at(field, problem));
}

export function SlabFields(props: Props) {
  const { form, shop, onProduct, onBy } = props;
  return (
    <>
      <WhatField shop={shop} value={form.product_id} onProduct={onProduct} kind="slab" />
      <SwitchField
        legend={t("desk.how_much")}
        value={form.by}
        options={(["kg", "pieces", "boxes"] as const).map((value) => ({ value, label: t(`desk.by_${value}`) }))}
        onValue={(by) => onBy(by as SlabForm["by"])}
      />
      <Amount {...props} />
      <Number {...props} field="room_c" />
      <MoreFields wrong={isFolded(props.problem)}>
        <Sizes {...props} />
      </MoreFields>
    </>
  );
}

/** What seldom changes from one batch of a product to the next. */
function Sizes(props: Props) {
  const { form, shop, onChange } = props;
  return (
    <>
      <WordsField label={t("desk.lot")} value={form.lot} most={60} onValue={(lot) => onChange({ lot })} />
      <OldCaramelFields {...props} />
      <Number {...props} field="slab_height_m" note={shop.bars.length ? t("desk.bars_owned", { bars: bars(shop) }) : undefined} />
      <div class="pair">
        <Number {...props} field="piece_length_m" />
        <Number {...props} field="piece_width_m" />
      </div>
      <SwitchField
        legend={t("desk.frame")}
        value={form.frame}
        options={(["fit", "given"] as const).map((value) => ({ value, label: t(`desk.frame_${value}`) }))}
        onValue={(frame) => onChange({ frame: frame as SlabForm["frame"] })}
      />
      {form.frame === "given" && shop.frames.length > 0 && <OwnFrame {...props} />}
      {form.frame === "given" && (
        <div class="pair">
          <Number {...props} field="frame_length_m" />
          <Number {...props} field="frame_width_m" />
        </div>
      )}
      <Equipment {...props} />
      <div class="pair">
        <Number {...props} field="humidity" />
        <Number {...props} field="start_c" />
      </div>
    </>
  );
}

/** A frame of the shop fills in both sides. */
function OwnFrame({ form, shop, onChange }: Props) {
  const mine = shop.frames.find((one) => one.length_m === form.frame_length_m && one.width_m === form.frame_width_m);
  const take = (id: string) => {
    const frame = shop.frames.find((one) => one.id === id);
    if (frame) onChange({ frame_length_m: frame.length_m, frame_width_m: frame.width_m });
  };
  const options = [...(mine ? [] : [{ value: "", label: t("shop.choose") }]), ...rowOptions(shop.frames)];
  return <ChoiceField label={t("shop.frame_of_shop")} value={mine?.id ?? ""} options={options} onValue={take} />;
}

/** What stands in the kitchen: a water-jacketed vessel needs no oven. */
function Equipment(props: Props) {
  const { form, shop, problem, onChange, onVessel } = props;
  const one = (name: "oven" | "vessel" | "base", rows: { id: string; name: string }[], take: (id: string) => void) => (
    <ChoiceField label={t(`desk.${name}`)} value={form[`${name}_id`]} options={rows.length ? rowOptions(rows) : [{ value: "", label: t("desk.none_in_shop") }]} problem={at(name, problem)} onValue={take} />
  );
  return (
    <>
      {one("vessel", shop.vessels, onVessel)}
      {jacketedVessel(form, shop) ? <Jacket {...props} /> : one("oven", shop.ovens, (oven_id) => onChange({ oven_id }))}
      {one("base", shop.bases, (base_id) => onChange({ base_id }))}
    </>
  );
}

/** What a water jacket wants to know: its water, and the block whole or chopped. */
function Jacket(props: Props) {
  const { form, onChange } = props;
  return (
    <>
      <Number {...props} field="water_c" />
      <SwitchField
        legend={t("desk.block_is")}
        value={form.block}
        options={(["whole", "chopped"] as const).map((value) => ({ value, label: t(`desk.block_${value}`) }))}
        onValue={(block) => onChange({ block: block as SlabForm["block"] })}
      />
      {form.block === "whole" ? (
        <Number {...props} field="thickness_m" note={t("desk.thickness_note")} />
      ) : (
        <Number {...props} field="chopped_m" />
      )}
    </>
  );
}

function bars(shop: Shop): string {
  return shop.bars.map((bar) => format("height_m", bar.height_m)).join(", ");
}

function Amount(props: Props) {
  if (props.form.by === "kg") return <Number {...props} field="kg" />;
  if (props.form.by === "pieces") return <Number {...props} field="pieces" />;
  return (
    <div class="pair">
      <Number {...props} field="boxes" />
      <Number {...props} field="per_box" />
    </div>
  );
}

type NumberName = { [K in keyof SlabForm]: SlabForm[K] extends number | null ? K : never }[keyof SlabForm];

function Number({ form, problem, onChange, onParseState, field, note }: Props & { field: NumberName; note?: string }) {
  return <PlanNumberField label={t(`desk.field_${field}`)} name={field} value={form[field]} problem={at(field, problem)} note={note} onParseState={onParseState} onValue={(value) => onChange({ [field]: value })} />;
}
