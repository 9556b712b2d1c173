import type { ProblemDocument, Shop } from "../../documents";
import { format, t } from "../../text";
import { ChoiceField, QuantityField, SwitchField } from "../../ui/fields";
import type { Change, PlanForm } from "./form";

interface Props {
  form: PlanForm;
  shop: Shop;
  problem: ProblemDocument | null;
  onChange: (change: Change) => void;
  onProduct: (id: string) => void;
  onRead: (name: string, fault: boolean) => void;
}

/** Which request fields a form field answers for: a problem is shown where it can be mended. */
const ANSWERS_FOR: Record<string, string[]> = {
  kg: ["have.kg", "have", "mass_kg"],
  pieces: ["want.pieces", "want"],
  boxes: ["want.boxes"],
  per_box: ["want.per_box"],
  frame_length_m: ["frame.length_m", "frame", "length_m", "trim_m"],
  frame_width_m: ["frame.width_m", "width_m"],
};

export function PlanFields(props: Props) {
  const { form, shop, onChange, onProduct } = props;
  const named = (rows: { id: string; name: string }[]) => rows.map(({ id, name }) => ({ value: id, label: name }));
  return (
    <>
      <ChoiceField label={t("desk.product")} value={form.product_id} options={named(shop.products)} onValue={onProduct} />
      <SwitchField
        legend={t("desk.how_much")}
        value={form.by}
        options={(["kg", "pieces", "boxes"] as const).map((value) => ({ value, label: t(`desk.by_${value}`) }))}
        onValue={(by) => onChange({ by: by as PlanForm["by"] })}
      />
      <Amount {...props} />
      <Number {...props} field="slab_height_m" note={t("desk.bars_owned", { bars: bars(shop) })} />
      <div class="pair">
        <Number {...props} field="piece_length_m" />
        <Number {...props} field="piece_width_m" />
      </div>
      <SwitchField
        legend={t("desk.frame")}
        value={form.frame}
        options={(["fit", "given"] as const).map((value) => ({ value, label: t(`desk.frame_${value}`) }))}
        onValue={(frame) => onChange({ frame: frame as PlanForm["frame"] })}
      />
      {form.frame === "given" && (
        <div class="pair">
          <Number {...props} field="frame_length_m" />
          <Number {...props} field="frame_width_m" />
        </div>
      )}
      <ChoiceField label={t("desk.oven")} value={form.oven_id} options={named(shop.ovens)} onValue={(oven_id) => onChange({ oven_id })} />
      <ChoiceField label={t("desk.vessel")} value={form.vessel_id} options={named(shop.vessels)} onValue={(vessel_id) => onChange({ vessel_id })} />
      <ChoiceField label={t("desk.base")} value={form.base_id} options={named(shop.bases)} onValue={(base_id) => onChange({ base_id })} />
      <div class="pair">
        <Number {...props} field="room_c" />
        <Number {...props} field="start_c" />
      </div>
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

type NumberName = { [K in keyof PlanForm]: PlanForm[K] extends number | null ? K : never }[keyof PlanForm];

function Number({ form, problem, onChange, onRead, field, note }: Props & { field: NumberName; note?: string }) {
  const mine = problem !== null && (problem.field === field || (ANSWERS_FOR[field]?.includes(problem.field) ?? false));
  return (
    <QuantityField
      label={t(`desk.field_${field}`)}
      name={field}
      value={form[field]}
      problem={mine ? problem : null}
      note={note}
      onValue={(value, fault) => {
        onRead(field, fault !== null);
        onChange({ [field]: value });
      }}
    />
  );
}
