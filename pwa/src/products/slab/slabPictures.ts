/** What the pictures show, gathered from plan, run and advice. No arithmetic but adding times up. */
import type { Advice, BenchEvent, ClusterPlan, DoneBurst, MeltRequest, MeltState, SlabPlan, SlabPlanReply, SlabRun, Values } from "../../documents";
import { isOfKind } from "../../order";
import type { Cooling } from "../../ui/pictures/CoolingCurve";
import type { Ladder, Rung } from "../../ui/pictures/BurstLadder";
import type { JacketTimes } from "../../ui/pictures/JacketLine";
import type { Slab } from "../../ui/pictures/SlabMap";
import type { TrayPlan } from "../../ui/pictures/TrayMap";

function lines(request: MeltRequest) {
  return { low_c: request.window_low_c, high_c: request.window_high_c, limit_c: request.limit_c };
}

/** The ladder as planned, nothing heated yet. */
export function plannedLadder(reply: Pick<SlabPlanReply, "melt" | "melt_request">): Ladder {
  const request = reply.melt_request as MeltRequest;
  let from_c = request.start_c;
  const rungs = (reply.melt?.bursts ?? []).map((burst): Rung => {
    const rung: Rung = {
      state: "planned",
      from_c,
      to_c: burst.expected_c,
      low_c: burst.low_c,
      high_c: burst.high_c,
      reading_c: null,
      seconds_s: burst.seconds_s,
    };
    from_c = burst.expected_c;
    return rung;
  });
  return { rungs, ...lines(request) };
}

/** The ladder as it went, with the burst that is running or advised as its open rung and what the plan adds above it. */
export function meltedLadder(plan: SlabPlan | ClusterPlan, melt: MeltState, advice: Advice | null): Ladder {
  const start_c = melt.request.start_c;
  let before_c = start_c;
  const rungs = melt.bursts.map((burst): Rung => {
    const rung = rungOf(burst, "done", before_c);
    before_c = rung.reading_c ?? rung.to_c;
    return rung;
  });
  const open = melt.burning ?? advisedBurst(advice);
  if (open) rungs.push(rungOf(open, "next", before_c));
  const now_c = rungs.at(-1)?.to_c ?? start_c;
  const still = open ? plannedLadder(plan.reply).rungs.slice(rungs.length).filter((rung) => rung.to_c > now_c + 1) : [];
  return { rungs: [...rungs, ...still], ...lines(melt.request) };
}

/** A burst that is done, runs or is advised, as far as a rung shows it. */
type Burst = Pick<DoneBurst, "seconds_s" | "from_c" | "expected_c" | "low_c" | "high_c"> & { reading_c?: number | null };

function rungOf(burst: Burst, state: Rung["state"], before_c: number): Rung {
  const from_c = burst.from_c ?? before_c;
  return {
    state,
    from_c,
    to_c: burst.reading_c ?? burst.expected_c ?? from_c,
    low_c: burst.low_c ?? null,
    high_c: burst.high_c ?? null,
    reading_c: burst.reading_c ?? null,
    seconds_s: burst.seconds_s,
  };
}

function advisedBurst(advice: Advice | null): Burst | null {
  const body = advice?.action?.body;
  if (advice?.action?.kind !== "burst_started" || !body) return null;
  const number = (name: string) => (typeof body[name] === "number" ? (body[name] as number) : null);
  return {
    seconds_s: number("seconds_s") ?? 0,
    from_c: number("from_c"),
    expected_c: number("expected_c"),
    low_c: number("low_c"),
    high_c: number("high_c"),
    reading_c: null,
  };
}

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

/** The curve as planned; `poured_ms` null draws it in hours after pouring. */
export function plannedCooling(reply: SlabPlanReply, poured_ms: number | null): Cooling {
  const { curve, milestones, target_c, ready_s, ready_low_s, ready_high_s } = reply.cool;
  const span = { target_c, ready_s, ready_low_s, ready_high_s };
  return { curve, milestones, ...span, readings: [], touches: [], poured_ms, now_s: null };
}

/** The curve of the last refit that the run has taken in, else the planned one; with what was read and felt. */
export function cooledSlab(plan: SlabPlan, events: BenchEvent[], { cool, done }: SlabRun, now_ms: number | null): Cooling {
  const poured_ms = done["melt"] ?? null;
  const refit = events.filter(isOfKind("cooling_refitted")).filter((one) => one.body.seen === cool.fitted).at(-1);
  const { curve, milestones } = refit?.body.reply ?? plan.reply.cool;
  return {
    ...plannedCooling(plan.reply, poured_ms),
    curve: curve ?? plan.reply.cool.curve,
    milestones: milestones ?? plan.reply.cool.milestones,
    ready_s: cool.ready_s,
    ready_low_s: cool.ready_low_s,
    ready_high_s: cool.ready_high_s,
    readings: cool.readings,
    touches: cool.touches,
    now_s: now_ms === null || poured_ms === null ? null : (now_ms - poured_ms) / 1000,
  };
}

/** Clusters of each size, in laying order. */
export type Sizes = ClusterPlan["reply"]["sizes"];

/** A full tray, or one with its own sizes; where they differ, the first tray. Plans of long ago know of none. */
export function trayOf({ request, reply }: Pick<ClusterPlan, "request" | "reply">, sizes: Sizes | undefined = reply.by_tray?.[0]?.sizes): TrayPlan {
  const { length_m, width_m } = request.tray;
  const across = sizes?.flatMap(({ clusters, spread_m }) => Array<number>(clusters).fill(spread_m));
  const positions_m = reply.positions_m.slice(0, across?.length).map(([x = 0, y = 0], place) => [x, y, across?.[place] ?? request.spread_m]);
  return { length_m, width_m, positions_m, pattern: reply.pattern };
}
