import type { ProblemDocument } from "../../documents";
import { problemAt } from "../../problems";
import { t } from "../../text";
import type { OldCaramel } from "./meltRequest";
import { PlanNumberField } from "./PlanNumberField";

interface Props {
  form: OldCaramel;
  problem: ProblemDocument | null;
  onChange: (change: Partial<OldCaramel>) => void;
  onParseState: (name: string, fault: boolean) => void;
}

/** Trim and leftovers to melt again: how much, or what share of the batch, and how often that was melted again already. */
export function OldCaramelFields({ form, problem, onChange, onParseState }: Props) {
  const one = (field: keyof OldCaramel, path: string) => (
    <PlanNumberField label={t(`desk.field_${field}`)} name={field} value={form[field]} problem={problemAt(problem, path, ...(field === "old_kg" ? ["old"] : []))} onParseState={onParseState} onValue={(value) => onChange({ [field]: value })} />
  );
  return (
    <fieldset class="sheet-row sheet-one">
      <legend>{t("desk.old_caramel_too")}</legend>
      <div class="pair">
        {one("old_kg", "old.kg")}
        {one("old_share", "old.share")}
      </div>
      {one("old_remelts", "old.remelts")}
    </fieldset>
  );
}
