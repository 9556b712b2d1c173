import type { PlanDocument } from "../../documents";
import type { FilledSheet, SlabRecord } from "../../state";
import { t } from "../../text";

/** A row of the sheet; an empty one is none. Times are as a time field has them: "14:05", or "". */
export interface Row {
  empty: boolean;
  at: string;
}

export const emptyBurst = () => ({ empty: true, at: "", seconds_s: null as number | null, free: "no", surface_c: null as number | null });
export const emptyLook = () => ({ empty: true, at: "", surface_c: null as number | null, firm: "" });

export interface SheetForm {
  /** "2026-03-04" */
  day: string;
  who: string;
  lot: string;
  notes: string;
  weighed_at_ms: string;
  weighed_kg: number | null;
  bursts: ReturnType<typeof emptyBurst>[];
  poured_at_ms: string;
  slab: ReturnType<typeof emptyLook>[];
  cut_at_ms: string;
  pieces: number | null;
  rest_kg: number | null;
}

/** A sheet has boxes for the bursts of a slab: a batch in a water jacket has none. */
export function hasSheet(plan: PlanDocument): boolean {
  return plan.kind === "slab" && plan.reply.melt !== null;
}

/** As many rows as the plan has bursts; the day the batch was planned. */
export function firstSheet({ plan, summary }: SlabRecord): SheetForm {
  return {
    day: dayOf(summary.opened_at_ms),
    who: "",
    lot: plan.lot ?? "",
    notes: "",
    weighed_at_ms: "",
    weighed_kg: null,
    bursts: (plan.reply.melt?.bursts ?? []).map(emptyBurst),
    poured_at_ms: "",
    slab: [emptyLook(), emptyLook()],
    cut_at_ms: "",
    pieces: null,
    rest_kg: null,
  };
}

function dayOf(ms: number): string {
  const day = new Date(ms);
  const two = (number: number) => String(number).padStart(2, "0");
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

const HALF_DAY_MS = 12 * 3_600_000;

/** Reads the kitchen clock's times in their order: one far before the last is of the next day. */
class KitchenClock {
  private last = -Infinity;

  constructor(private readonly day: string) {}

  /** ms; null where nothing stands. */
  read(time: string): number | null {
    if (time === "") return null;
    const at = new Date(`${this.day}T${time}`);
    while (at.getTime() < this.last - HALF_DAY_MS) at.setDate(at.getDate() + 1);
    this.last = at.getTime();
    return this.last;
  }
}

/** The sheet as the engine asks for it; the engine says what is missing or cannot be. */
export function sheetOf(form: SheetForm): FilledSheet {
  const clock = new KitchenClock(form.day || dayOf(Date.now()));
  const weighed_at_ms = clock.read(form.weighed_at_ms);
  const bursts = form.bursts
    .filter((row) => !row.empty)
    .map((row) => ({ at_ms: clock.read(row.at), seconds_s: row.seconds_s, free: row.free === "yes", surface_c: row.surface_c }));
  const poured_at_ms = clock.read(form.poured_at_ms);
  const slab = form.slab
    .filter((row) => !row.empty)
    .map((row) => ({ at_ms: clock.read(row.at), surface_c: row.surface_c, firm: row.firm === "" ? null : row.firm === "yes" }));
  return {
    weighed_at_ms,
    weighed_kg: form.weighed_kg,
    lot: form.lot.trim() || null,
    bursts,
    poured_at_ms,
    slab,
    cut_at_ms: clock.read(form.cut_at_ms),
    pieces: form.pieces,
    rest_kg: form.rest_kg,
    notes: [form.who.trim() && t("paper.who", { who: form.who.trim() }), form.notes.trim()].filter(Boolean),
  } as FilledSheet;
}
