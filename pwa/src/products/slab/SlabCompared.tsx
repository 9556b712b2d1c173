import type { SlabPlan, SlabRun } from "../../documents";
import { format, formatDuration, formatNumber, t } from "../../text";
import { type ComparedRow, ComparedTable } from "../../ui/ComparedTable";
import type { RecordOf } from "../kindViews";
import { jacketOf } from "./slabPictures";

import { dipRows } from "../shared/dipRows";
import { Card } from "../../ui/Card";

/** Planned beside happened, and the yield. */
export function SlabCompared({ record }: { record: RecordOf<"slab"> }) {
  return (
    <Card title={t("desk.planned_happened")}>
      <ComparedTable rows={rows(record)} />
      {yieldWords(record).map((words) => (
        <p key={words} class="answer">
          {words}
        </p>
      ))}
    </Card>
  );
}

function rows({ plan, run }: RecordOf<"slab">): ComparedRow[] {
  const { reply } = plan;
  const [poured, firm] = [run.done["melt"], run.done["cool"]];
  return [
    { what: t("desk.row_caramel"), planned: format("caramel_kg", reply.caramel_kg), happened: format("caramel_kg", run.weighed_kg) },
    { what: t("desk.row_lot"), planned: "", happened: run.lot ?? "–" },
    melted(plan, run),
    {
      what: t("desk.row_ready"),
      planned: formatDuration(reply.cool.ready_s),
      happened: poured !== undefined && firm !== undefined ? formatDuration((firm - poured) / 1000) : "–",
    },
    ...dipRows(plan, run),
    { what: t("desk.row_pieces"), planned: String(reply.cut.pieces), happened: format("pieces", run.pieces) },
  ];
}

/** How long in the water jacket, or how many bursts in the oven. */
function melted({ reply }: SlabPlan, run: SlabRun): ComparedRow {
  const jacket = jacketOf(run, null);
  if (reply.jacket) {
    const took_s = jacket?.poured_s ?? null;
    const planned = formatDuration(reply.jacket.seconds_s);
    return { what: t("desk.row_jacket"), planned, happened: took_s === null ? "–" : formatDuration(took_s) };
  }
  const bursts = run.melt.bursts.length;
  return { what: t("desk.row_bursts"), planned: String(reply.melt?.bursts.length ?? "–"), happened: bursts ? String(bursts) : "–" };
}

/** Yield by count and by mass, in per cent of what was planned and weighed in; nothing before the count. */
function yieldWords({ plan, run, summary }: RecordOf<"slab">): string[] {
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
