/** The ladder of bursts, gathered from plan, run and advice. No arithmetic. */
import type { Advice, DoneBurst, MeltRequest, MeltState, SlabPlanReply } from "../../documents";
import type { Ladder, Rung } from "../../ui/pictures/BurstLadder";

/** The steps of a melt, in an oven or in a water jacket. */
export const MELTING = ["burst", "turn", "stir", "read", "rest", "melt", "block_in", "soften", "look", "top_up"];

/** What a plan in an oven replies of its melt. */
type MeltReply = Pick<SlabPlanReply, "melt" | "melt_request">;

function lines(request: MeltRequest) {
  return { low_c: request.window_low_c, high_c: request.window_high_c, limit_c: request.limit_c };
}

/** The ladder as planned, nothing heated yet. */
export function plannedLadder(reply: MeltReply): Ladder {
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
      ...lowered(burst.level_percent),
    };
    from_c = burst.expected_c;
    return rung;
  });
  return { rungs, ...lines(request) };
}

/** The ladder as it went, with the burst that is running or advised as its open rung and what the plan adds above it. */
export function meltedLadder({ reply }: { reply: MeltReply }, melt: MeltState, advice: Advice | null): Ladder {
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
  const still = open ? plannedLadder(reply).rungs.slice(rungs.length).filter((rung) => rung.to_c > now_c + 1) : [];
  return { rungs: [...rungs, ...still], ...lines(melt.request) };
}

/** A burst that is done, runs or is advised, as far as a rung shows it. */
type Burst = Pick<DoneBurst, "seconds_s" | "from_c" | "expected_c" | "low_c" | "high_c" | "level_percent"> & { reading_c?: number | null };

/** The power level where it is below full power. Plans and batches of before have none. */
export function lowered(level_percent: number | undefined): { level_percent?: number } {
  return level_percent === undefined || level_percent === 100 ? {} : { level_percent };
}

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
    ...lowered(burst.level_percent),
  };
}

function advisedBurst(advice: Advice | null): Burst | null {
  const body = advice?.action?.body;
  if (advice?.action?.kind !== "burst_started" || !body) return null;
  const number = (name: string) => (typeof body[name] === "number" ? (body[name] as number) : null);
  return {
    seconds_s: number("seconds_s") ?? 0,
    level_percent: number("level_percent") ?? 100,
    from_c: number("from_c"),
    expected_c: number("expected_c"),
    low_c: number("low_c"),
    high_c: number("high_c"),
    reading_c: null,
  };
}
