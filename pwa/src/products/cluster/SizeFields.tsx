import type { ProblemDocument, Shop } from "../../documents";
import { problemAt } from "../../problems";
import { t } from "../../text";
import { type ClusterForm, MOST_SIZES, withAnotherSize, type Size } from "./clusterForm";
import { PlanNumberField } from "../shared/PlanNumberField";

export interface FieldsProps {
  form: ClusterForm;
  shop: Shop;
  problem: ProblemDocument | null;
  onChange: (change: Partial<ClusterForm>) => void;
  onParseState: (name: string, fault: boolean) => void;
}

/** How many clusters with how much on each, size by size in laying order; or caramel in hand, and one size. */
export function SizeFields({ form: { by, kg, sizes }, problem, onChange, onParseState }: Omit<FieldsProps, "shop">) {
  const deposit = (size: Size, path: string) => (
    <PlanNumberField
      label={t("desk.cluster_deposit_kg")}
      name="deposit_kg"
      place={`deposit ${size.id}`}
      value={size.deposit_kg}
      problem={problemAt(problem, path)}
      onParseState={onParseState}
      onValue={(deposit_kg) => put(size, { deposit_kg })}
    />
  );
  const put = (size: Size, part: Partial<Size>) => onChange({ sizes: sizes.map((one) => (one === size ? { ...one, ...part } : one)) });
  const [first] = sizes;
  if (by === "kg" && first)
    return (
      <div class="pair">
        <PlanNumberField label={t("desk.cluster_kg")} name="kg" value={kg} problem={problemAt(problem, "caramel_kg")} onParseState={onParseState} onValue={(value) => onChange({ kg: value })} />
        {deposit(first, "deposit_kg")}
      </div>
    );
  const several = sizes.length > 1;
  return (
    <>
      {sizes.map((size, index) => (
        <fieldset key={size.id} class={several ? "sheet-row" : "sheet-row sheet-one"}>
          {several && <legend>{t("desk.cluster_size", { n: index + 1 })}</legend>}
          <div class="pair">
            <PlanNumberField
              label={t("desk.cluster_pieces")}
              name="clusters"
              place={`clusters ${size.id}`}
              value={size.clusters}
              problem={problemAt(problem, `rows[${index}].clusters`, index ? "" : "rows")}
              onParseState={onParseState}
              onValue={(clusters) => put(size, { clusters })}
            />
            {deposit(size, `rows[${index}].deposit_kg`)}
          </div>
          {several && (
            <div class="buttons">
              <button type="button" onClick={() => onChange({ sizes: sizes.filter((one) => one !== size) })}>
                {t("button.remove_size")}
              </button>
            </div>
          )}
        </fieldset>
      ))}
      {sizes.length < MOST_SIZES && (
        <div class="buttons">
          <button type="button" onClick={() => onChange({ sizes: withAnotherSize(sizes) })}>
            {t("button.another_size")}
          </button>
        </div>
      )}
    </>
  );
}
