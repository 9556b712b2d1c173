import type { Run } from "../../documents";
import { format, formatDuration, formatRange, t } from "../../text";
import { type ComparedRow, ComparedTable } from "../../ui/ComparedTable";
import { BowlLine } from "../../ui/pictures/BowlLine";
import type { RecordOf } from "../kindViews";
import { Card } from "../../ui/Card";

type ChocolateRecord = RecordOf<"chocolate">;

/** A bowl of chocolate: planned beside happened. */
export function ChocolateCompared({ record }: { record: ChocolateRecord }) {
  return (
    <Card title={t("desk.planned_happened")}>
      <ComparedTable rows={rows(record)} />
    </Card>
  );
}

/** Its temperature as it went; nothing can be drawn before it was read. */
export function ChocolatePicture({ record: { run } }: { record: ChocolateRecord }) {
  if (!run.bowl || run.bowl.readings.length === 0) return <p class="quiet">{t("desk.bowl_never_read")}</p>;
  return (
    <>
      <p class="quiet">{t("desk.bowl_picture_note")}</p>
      <BowlLine bowl={run.bowl} place="desk" />
    </>
  );
}

function rows({ plan, run }: ChocolateRecord): ComparedRow[] {
  const { bowl } = run;
  if (!bowl) return [];
  const { reply } = plan;
  const { line, seeds, strips, warmed, leftover_lot } = bowl;
  const seeded_kg = seeds.reduce((sum, one) => sum + one.kg, 0);
  // Tempered again, it is still the same bowl in use.
  const proven_ms = strips.find((one) => one.good)?.at_ms;
  const strip = t("desk.strips_good", { n: strips.length, good: strips.filter((one) => one.good).length });
  return [
    { what: t("desk.row_melted"), planned: format("kg", reply.melt_kg), happened: format("kg", run.weighed_kg) },
    { what: t("desk.row_lot"), planned: "", happened: run.lot ?? "–" },
    { what: t("desk.row_seed"), planned: format("kg", reply.seed_kg), happened: seeds.length ? format("kg", seeded_kg) : "–" },
    { what: t("desk.row_work_range"), planned: formatRange("bowl_c", line.work_low_c, line.work_high_c), happened: readRange(bowl.readings, proven_ms) },
    { what: t("desk.row_strips"), planned: "", happened: strips.length ? strip : "–" },
    { what: t("desk.row_warmed"), planned: "", happened: String(warmed.length) },
    { what: t("desk.row_in_use"), planned: "", happened: usedFor(proven_ms, run.done["use"]) },
    { what: t("desk.row_leftover"), planned: "", happened: leftover(run, leftover_lot) },
  ];
}

/** Between which temperatures it was while in use. */
function readRange(readings: { at_ms: number; bowl_c: number }[], proven_ms: number | undefined): string {
  const read = proven_ms === undefined ? [] : readings.filter((one) => one.at_ms >= proven_ms).map((one) => one.bowl_c);
  return read.length ? formatRange("bowl_c", Math.min(...read), Math.max(...read)) : "–";
}

function usedFor(from: number | undefined, to: number | undefined): string {
  return from === undefined || to === undefined ? "–" : formatDuration((to - from) / 1000);
}

function leftover({ out }: Run, lot: string | null): string {
  if (out.length === 0) return "–";
  const kg = format("kg", out.reduce((sum, one) => sum + one.kg, 0));
  return lot ? t("desk.with_lot", { what: kg, lot }) : kg;
}
