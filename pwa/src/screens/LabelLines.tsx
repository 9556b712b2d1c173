import type { Run } from "../documents";
import { t } from "../text";
import { whyWords } from "./Reasons";

/** What stands first of a batch: that it was thrown away, what was not washed off before it, what it contains. */
export function labelLines({ thrown_away, unwashed = [], contains = [], labels_known = false }: Run): string[] {
  const lines = thrown_away ? [t("desk.thrown_away", { why: whyWords(thrown_away) })] : [];
  lines.push(...unwashed.map((one) => t("desk.may_contain", { allergens: one.allergens, why: whyWords(one) })));
  if (contains.length > 0) lines.push(t(labels_known ? "caution.contains" : "day.holds_some", { allergens: contains }));
  else if (!labels_known) lines.push(t("day.holds_unknown"));
  return lines;
}

export function LabelLines({ run }: { run: Run }) {
  const grave = Boolean(run.thrown_away) || (run.may_contain ?? []).length > 0;
  return (
    <div class={grave ? "card card-wrong" : "card"}>
      {labelLines(run).map((line) => (
        <p key={line}>{line}</p>
      ))}
    </div>
  );
}
