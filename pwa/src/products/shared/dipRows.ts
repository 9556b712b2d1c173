import type { ClusterPlan, Run, SlabPlan } from "../../documents";
import { format, t } from "../../text";
import type { ComparedRow } from "../../ui/ComparedTable";

/** The rows of chocolate and salt in the record of a dipped batch: planned beside happened. */
export function dipRows({ reply }: SlabPlan | ClusterPlan, { dip }: Run): ComparedRow[] {
  if (!dip) return [];
  const bowls = (dip.bowls ?? []).map(({ name, lot }) => (lot ? t("desk.with_lot", { what: name, lot }) : name));
  const rows = [
    { what: t("desk.row_chocolate"), planned: format("total_kg", reply.dip?.total_kg), happened: bowls.join("; ") || "–" },
  ];
  if (!reply.dip?.salt_kg) return rows;
  const salted = dip.salted ? t("desk.salted_times", { n: dip.salted }) : "–";
  return [...rows, { what: t("desk.row_salt"), planned: format("salt_kg", reply.dip.salt_kg), happened: salted }];
}
