import type { SlabPlanReply, SlabRun, Summary } from "../../documents";
import { format, formatDuration, formatNumber, t } from "../../text";
import { Card } from "../../ui/Card";
import { type ComparedRow, ComparedTable } from "../../ui/ComparedTable";

interface ComparedRecord {
  plan: { reply: Pick<SlabPlanReply, "caramel_kg" | "cool" | "melt"> & { cut: { pieces: number } } };
  run: Pick<SlabRun, "weighed_kg" | "lot" | "done" | "melt" | "pieces">;
  summary: Summary;
}

interface Props {
  record: ComparedRecord;
  /** How it was melted; left out: in an oven. */
  melted?: ComparedRow;
  /** What a kind adds before the count. */
  more?: ComparedRow[];
}

/** Planned beside happened, and the yield, of what is poured between bars. */
export function PouredCompared({ record, melted = inBursts(record), more = [] }: Props) {
  const { plan, run } = record;
  const { reply } = plan;
  const [poured, firm] = [run.done["melt"], run.done["cool"]];
  const rows = [
    { what: t("desk.row_caramel"), planned: format("caramel_kg", reply.caramel_kg), happened: format("caramel_kg", run.weighed_kg) },
    { what: t("desk.row_lot"), planned: "", happened: run.lot ?? "–" },
    melted,
    {
      what: t("desk.row_ready"),
      planned: formatDuration(reply.cool.ready_s),
      happened: poured !== undefined && firm !== undefined ? formatDuration((firm - poured) / 1000) : "–",
    },
    ...more,
    { what: t("desk.row_pieces"), planned: String(reply.cut.pieces), happened: format("pieces", run.pieces) },
  ];
  return (
    <Card title={t("desk.planned_happened")}>
      <ComparedTable rows={rows} />
      {yieldWords(record).map((words) => (
        <p key={words} class="answer">
          {words}
        </p>
      ))}
    </Card>
  );
}

function inBursts({ plan: { reply }, run }: ComparedRecord): ComparedRow {
  const bursts = run.melt.bursts.length;
  return { what: t("desk.row_bursts"), planned: String(reply.melt?.bursts.length ?? "–"), happened: bursts ? String(bursts) : "–" };
}

/** Yield by count and by mass, in per cent of what was planned and weighed in; nothing before the count. */
function yieldWords({ plan, run, summary }: ComparedRecord): string[] {
  const { pieces } = run;
  if (pieces === null) return [t("desk.not_counted_yet")];
  const words = [t("desk.yield_pieces", { n: pieces, percent: percent(pieces, plan.reply.cut.pieces) })];
  const weighed = run.weighed_kg ?? summary.caramel_kg;
  if (summary.good_kg !== null && weighed) {
    words.push(t("desk.yield_mass", { good_kg: summary.good_kg, percent: percent(summary.good_kg, weighed) }));
  }
  return words;
}

function percent(part: number, whole: number): string {
  return whole > 0 ? formatNumber((100 * part) / whole, 0) : "–";
}
