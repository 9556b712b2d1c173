import type { ComponentChildren } from "preact";

import type { ClusterPlan, MeltRequest, SlabPlan } from "../../documents";
import { units } from "../../state";
import { dimensionOf, format, formatDate, formatRange, t, unitFor } from "../../text";
import { CutList, SlabMap } from "../../ui/pictures/SlabMap";
import { slabOf } from "../../products/slab/slabPictures";
import { ClusterSentences, TrayMaps } from "../../products/cluster/ClusterAnswerCards";
import { BatchPage, Cautions, ClusterCautions } from "../../products/shared/paper";
import type { SheetPlan } from "../../products/shared/sheetForm";

/** Rows beyond the plan's own bursts and fills, and rows for readings and touch tests of the slab. */
const MORE_BURSTS = 4;
const MORE_FILLS = 2;
const LOOKS = 4;
/** The page has no room for more rows in a table; what comes then goes on its back. */
const MOST_PRINTED = 12;
/** Below more trays than these there is no room for a map, which the plan's own page has; the sentences go under both. */
const MOST_BESIDE_A_MAP = 5;

interface Props {
  plan: SheetPlan;
  opened_at_ms: number;
  /** Leads to where the sheet is typed back; null where it cannot be. */
  onType: (() => void) | null;
  onClose: () => void;
}

/** A batch to run without a phone: what to do, and empty boxes for what happens. */
export function SheetPaper({ plan, opened_at_ms, onType, onClose }: Props) {
  const { reply } = plan;
  const type = onType && (
    <button type="button" class="go go-quiet" onClick={onType}>
      {t("button.type_back")}
    </button>
  );
  return (
    <BatchPage title={plan.name} lines={[t("paper.sheet"), t("paper.plan_of", { day: formatDate(opened_at_ms) })]} onClose={onClose} more={type}>
      <Line names={["paper.box_day", "paper.box_who", "paper.box_lot"]} />
      <Line names={["paper.box_ready", "paper.box_weighed"]} values={{ caramel_kg: reply.caramel_kg }} />
      {reply.melt && <Bursts bursts={reply.melt.bursts} more={MORE_BURSTS + (plan.kind === "cluster" ? plan.reply.reheats : 0)} window={reply.melt_request as MeltRequest} />}
      {plan.kind === "slab" ? <SlabHalves reply={plan.reply} /> : <ClusterHalves plan={plan} />}
      {plan.kind === "slab" ? <Cautions jacket={false} /> : <ClusterCautions />}
    </BatchPage>
  );
}

function SlabHalves({ reply }: Pick<SlabPlan, "reply">) {
  const slab = slabOf(reply);
  const firm = (
    <>
      <span class="box">{t("basis.yes")}</span> <span class="box">{t("paper.not_yet")}</span>
    </>
  );
  return (
    <div class="halves">
      <div>
        <Line names={["paper.box_poured"]} />
        <p>{t("paper.ready_after", { ready_s: reply.cool.ready_s, low_s: reply.cool.ready_low_s, high_s: reply.cool.ready_high_s })}</p>
        <ByHand looks heads={[t("paper.column_time"), degrees("paper.column_top"), t("paper.column_firm")]} number={LOOKS} row={() => ["", "", firm]} />
        <Line names={["paper.box_cut", "paper.box_pieces"]} values={{ n: reply.cut.pieces }} />
        <Line names={["paper.box_rest"]} />
        <Line names={["paper.box_notes"]} />
      </div>
      <section>
        <h2>{t("desk.slab_and_frame")}</h2>
        <SlabMap slab={slab} place="desk" />
        <CutList slab={slab} />
      </section>
    </div>
  );
}

/** Fills and trays to be filled in, and the plan in words. */
function ClusterHalves({ plan: { request, reply } }: { plan: ClusterPlan }) {
  const again = reply.second ? [t("desk.cluster_second_kg")] : [];
  const mapped = reply.trays <= MOST_BESIDE_A_MAP;
  const sentences = <ClusterSentences reply={reply} />;
  return (
    <>
      <div class="halves">
        <div>
          <p class="fill">
            <span class="box">{t("say.allergens")}</span>
          </p>
          <ByHand heads={[t("clock.fill"), t("button.filled"), degrees("paper.type_surface_c")]} number={reply.fills + MORE_FILLS} row={(n) => [n, "", ""]} />
          {mapped && sentences}
        </div>
        <div>
          <ByHand heads={[t("desk.cluster_tray"), t("event.tray_laid"), ...again, t("event.tray_freed_free")]} number={reply.trays + 1} row={(n) => [n, "", ...again.map(() => ""), ""]} />
          <Line names={["desk.row_clusters", "desk.row_loose"]} />
          <Line names={["paper.box_rest", "paper.box_notes"]} />
          <TrayMaps request={request} reply={reply} most={mapped ? 1 : 0} />
        </div>
      </div>
      {!mapped && <div class="wide">{sentences}</div>}
    </>
  );
}

/** A column's name, and the unit readings are written in. */
function degrees(name: string): string {
  return `${t(name)} (${unitFor(dimensionOf("surface_c"), units.value)})`;
}

/** Names with a line to write on behind each. */
function Line({ names, values = {} }: { names: string[]; values?: Record<string, unknown> }) {
  return (
    <div class="fill">
      {names.map((name) => (
        <span key={name}>{t(name, values)}</span>
      ))}
    </div>
  );
}

interface TableProps {
  heads: string[];
  number: number;
  row: (n: number) => ComponentChildren[];
  looks?: boolean;
}

/** A table to be filled in; a number heads its row. */
function ByHand({ heads, number, row, looks }: TableProps) {
  const rows = Array.from({ length: Math.min(MOST_PRINTED, number) }, (_, index) => row(index + 1));
  return (
    <>
      <table class={looks ? "by-hand looks" : "by-hand"}>
        <thead>
          <tr>
            {heads.map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((cells, index) => (
            <tr key={index}>{cells.map((cell, place) => (typeof cell === "number" ? <th key={place} scope="row">{cell}</th> : <td key={place}>{cell}</td>))}</tr>
          ))}
        </tbody>
      </table>
      {number > MOST_PRINTED && <p class="quiet">{t("paper.on_the_back")}</p>}
    </>
  );
}

interface BurstsProps {
  /** Rows beyond them. */
  more: number;
  bursts: NonNullable<SlabPlan["reply"]["melt"]>["bursts"];
  window: MeltRequest;
}

function Bursts({ bursts, more, window }: BurstsProps) {
  const planned = (row: number) => {
    const burst = bursts[row - 1];
    return burst && `${format("seconds_s", burst.seconds_s)}, ${formatRange("end_c", burst.low_c, burst.high_c)}`;
  };
  return (
    <section>
      <h2>{t("paper.melting", { window: formatRange("window_c", window.window_low_c, window.window_high_c), limit_c: window.limit_c })}</h2>
      <ByHand
        heads={[...["burst", "planned", "started", "seconds", "free"].map((one) => t(`paper.column_${one}`)), degrees("paper.column_read")]}
        number={bursts.length + more}
        row={(n) => [n, planned(n), "", "", <span class="box" />, ""]}
      />
    </section>
  );
}
