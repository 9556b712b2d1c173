/** What the pictures of a slab show, gathered from plan and run. No arithmetic but adding times up. */
import type { SlabPlanReply, SlabRun, Values } from "../../documents";
import type { JacketTimes } from "../../ui/pictures/JacketLine";
import type { Slab } from "../../ui/pictures/SlabMap";

/** The water jacket as planned; null: it is melted in an oven. */
export function plannedJacket({ jacket }: SlabPlanReply, started_ms: number | null): JacketTimes | null {
  if (!jacket) return null;
  const { seconds_s, low_s, high_s } = jacket;
  return { started_ms, seconds_s, low_s, high_s, looks: [], now_s: null, poured_s: null };
}

/** The water jacket as it goes or went; `now_ms` null: looked back at. */
export function jacketOf({ melt: { jacket }, done }: SlabRun, now_ms: number | null): JacketTimes | null {
  if (!jacket) return null;
  const { started_ms, looks } = jacket;
  // Looked back at, the plan stands as it was.
  const slower = now_ms === null ? 1 : jacket.slower;
  const [seconds_s, low_s, high_s] = [jacket.seconds_s * slower, jacket.low_s * slower, jacket.high_s * slower];
  const after = (ms: number | null | undefined) => (started_ms === null || ms == null ? null : (ms - started_ms) / 1000);
  const poured_s = after(done["melt"]);
  return { started_ms, seconds_s, low_s, high_s, looks, now_s: poured_s === null ? after(now_ms) : null, poured_s };
}

export function slabOf(reply: SlabPlanReply): Slab {
  return {
    length_m: reply.pour.length_m,
    width_m: reply.pour.width_m,
    along_m: reply.cut.cuts_along_m,
    across_m: reply.cut.cuts_across_m,
    rows: reply.cut.rows,
    columns: reply.cut.columns,
  };
}

/** The frame alone, as long as the words beside it say: another weight than planned makes another length. */
export function frameOf(reply: SlabPlanReply, said: Values = {}): Slab {
  const slab = slabOf(reply);
  const length_m = typeof said["length_m"] === "number" ? said["length_m"] : slab.length_m;
  return { ...slab, length_m, along_m: [0, slab.width_m], across_m: [0, length_m] };
}
