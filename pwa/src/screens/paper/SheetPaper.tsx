import type { HeatLines, SlabPlanReply } from "../../documents";
import { type SlabRecord, units } from "../../state";
import { dimensionOf, format, formatDate, formatRange, t, unitFor } from "../../text";
import { CutList, SlabMap } from "../../ui/pictures/SlabMap";
import { slabOf } from "../pictures";
import { BatchPage, Cautions } from "./parts";

/** Rows beyond the plan's own bursts, and rows for readings and touch tests of the slab. */
const MORE_BURSTS = 4;
const LOOKS = 4;

interface Props {
  record: SlabRecord;
  /** Leads to where the sheet is typed back; null where it cannot be. */
  onType: (() => void) | null;
  onClose: () => void;
}

/** A batch to run without a phone: what to do, and empty boxes for what happens. */
export function SheetPaper({ record: { plan, summary }, onType, onClose }: Props) {
  const { reply } = plan;
  const slab = slabOf(reply);
  const type = onType && (
    <button type="button" class="go go-quiet" onClick={onType}>
      {t("button.type_back")}
    </button>
  );
  return (
    <BatchPage title={plan.name} lines={[t("paper.sheet"), t("paper.plan_of", { day: formatDate(summary.opened_at_ms) })]} onClose={onClose} more={type}>
      <Line names={["paper.box_day", "paper.box_who", "paper.box_lot"]} />
      <Line names={["paper.box_ready", "paper.box_weighed"]} values={{ caramel_kg: reply.caramel_kg }} />
      {reply.melt && <Bursts bursts={reply.melt.bursts} window={reply.melt_request as HeatLines} />}
      <div class="halves">
        <div>
          <Line names={["paper.box_poured"]} />
          <p>{t("paper.ready_after", { ready_s: reply.cool.ready_s, low_s: reply.cool.ready_low_s, high_s: reply.cool.ready_high_s })}</p>
          <Looks />
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
      <Cautions jacket={false} />
    </BatchPage>
  );
}

/** The unit readings are written in. */
function degrees(): string {
  return unitFor(dimensionOf("surface_c"), units.value);
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

interface BurstsProps {
  bursts: NonNullable<SlabPlanReply["melt"]>["bursts"];
  window: HeatLines;
}

function Bursts({ bursts, window }: BurstsProps) {
  const rows = Array.from({ length: bursts.length + MORE_BURSTS }, (_, index) => bursts[index] ?? null);
  return (
    <section>
      <h2>{t("paper.melting", { window: formatRange("window_c", window.window_low_c, window.window_high_c), limit_c: window.limit_c })}</h2>
      <table class="by-hand">
        <thead>
          <tr>
            <th scope="col">{t("paper.column_burst")}</th>
            <th scope="col">{t("paper.column_planned")}</th>
            <th scope="col">{t("paper.column_started")}</th>
            <th scope="col">{t("paper.column_seconds")}</th>
            <th scope="col">{t("paper.column_free")}</th>
            <th scope="col">{t("paper.column_read")} ({degrees()})</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((burst, index) => (
            <tr key={index}>
              <th scope="row">{index + 1}</th>
              <td>{burst && `${format("seconds_s", burst.seconds_s)}, ${formatRange("end_c", burst.low_c, burst.high_c)}`}</td>
              <td />
              <td />
              <td class="box" />
              <td />
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Looks() {
  return (
    <table class="by-hand looks">
      <thead>
        <tr>
          <th scope="col">{t("paper.column_time")}</th>
          <th scope="col">{t("paper.column_top")} ({degrees()})</th>
          <th scope="col">{t("paper.column_firm")}</th>
        </tr>
      </thead>
      <tbody>
        {Array.from({ length: LOOKS }, (_, index) => (
          <tr key={index}>
            <td />
            <td />
            <td>
              <span class="box">{t("basis.yes")}</span> <span class="box">{t("paper.not_yet")}</span>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
