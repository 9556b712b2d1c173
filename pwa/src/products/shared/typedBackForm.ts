import type { ComponentChildren } from "preact";

import type { MeltRequest } from "../../documents";
import type { BatchRecord, FilledSheet } from "../../state";
import { t } from "../../text";
import { traitsOf } from "../traitRegistry";
import { withoutEmpty } from "./request";

/** A batch sheet has no more rows of a kind. */
export const MOST_ROWS = 40;

/** A row of the sheet; an empty one is none. Times are as a time field has them: "14:05", or "". */
export type Row = Record<string, string | number | null>;

/** The tables of a sheet, and the boxes of a row: times, but for what ends in a unit or is ticked. */
const TABLES: Record<Table, string[]> = {
  bursts: ["at", "seconds_s", "level_percent", "free", "surface_c"],
  slab: ["at", "surface_c", "firm"],
  fills: ["at", "surface_c"],
  trays: ["laid_at_ms", "second_at_ms", "freed_at_ms"],
};
export type Table = "bursts" | "slab" | "fills" | "trays";

const UNIT = /_(s|c|percent)$/;
export const isQuantity = (box: string): boolean => UNIT.test(box);

export function emptyRow(table: Table): Row {
  return Object.fromEntries(TABLES[table].map((box) => [box, isQuantity(box) ? null : box === "free" ? "no" : ""]));
}

/** Whether nothing stands in a row. */
export function isRowEmpty(row: Row): boolean {
  return Object.entries(row).every(([box, value]) => box === "empty" || value === null || value === "" || value === "no");
}

export interface SheetForm extends Record<Table, Row[]> {
  /** "2026-03-04" */
  day: string;
  who: string;
  lot: string;
  notes: string;
  weighed_at_ms: string;
  weighed_kg: number | null;
  old_kg?: number | null;
  /** Of what lies under, one after the other; a sheet begun by an older form lacks these. */
  under_lots?: string[];
  clear: string;
  poured_at_ms: string;
  cut_at_ms: string;
  pieces: number | null;
  loose_kg: number | null;
  rest_kg: number | null;
}

/** What draws the boxes of a sheet that is typed back; labels are keys. */
export interface BoxTools {
  number(name: "weighed_kg" | "old_kg" | "pieces" | "rest_kg" | "loose_kg", label?: string): ComponentChildren;
  time(name: "weighed_at_ms" | "poured_at_ms" | "cut_at_ms"): ComponentChildren;
  /** Whether the bench is clear of what the batch does not declare. */
  clear(): ComponentChildren;
  /** The lot of what lies under; `index`: which of them. */
  underLot(index: number, label: string): ComponentChildren;
  /** A table; `left`: a box that the plan has no use for. */
  rows(table: Table, title: (n: number) => string, left?: string): ComponentChildren;
  /** The button that adds a row to it. */
  more(table: Table, label: string): ComponentChildren;
}

/** As many rows as the plan has, with some to spare; the day the batch was planned. */
export function firstSheet({ plan, summary }: BatchRecord): SheetForm {
  const rows = (table: Table, number: number) => Array.from({ length: Math.min(MOST_ROWS, number) }, () => emptyRow(table));
  const planned = traitsOf(plan.kind).sheet?.rows(plan) ?? { bursts: 0, slab: 0, fills: 0, trays: 0 };
  return {
    day: dayOf(summary.opened_at_ms),
    who: "",
    lot: plan.lot ?? "",
    notes: "",
    weighed_at_ms: "",
    weighed_kg: null,
    clear: "no",
    bursts: rows("bursts", planned.bursts),
    poured_at_ms: "",
    slab: rows("slab", planned.slab),
    fills: rows("fills", planned.fills),
    trays: rows("trays", planned.trays),
    cut_at_ms: "",
    pieces: null,
    loose_kg: null,
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

/** A row of a table as the engine asks for it. */
type RowOf<T extends Table> = NonNullable<FilledSheet[T]>[number];

/** The sheet as the engine asks for it; the engine says what is missing or cannot be. */
export function sheetOf(form: SheetForm, { plan }: Pick<BatchRecord, "plan">): FilledSheet {
  const clock = new KitchenClock(form.day || dayOf(Date.now()));
  // A sheet that was begun by an older form lacks what is newer.
  const rows = (table: Table) => (form[table] ?? []).filter((row) => !isRowEmpty(row));
  const time = (row: Row, box: string) => clock.read(String(row[box] ?? ""));
  const quantity = (row: Row, box: string) => (typeof row[box] === "number" ? row[box] : null);
  return {
    // In the order the kitchen's clock went.
    weighed_at_ms: clock.read(form.weighed_at_ms),
    bursts: rows("bursts").map((row) =>
      withoutEmpty<RowOf<"bursts">>({ at_ms: time(row, "at"), seconds_s: quantity(row, "seconds_s"), level_percent: quantity(row, "level_percent"), free: row["free"] === "yes", surface_c: quantity(row, "surface_c") }),
    ),
    poured_at_ms: clock.read(form.poured_at_ms),
    slab: rows("slab").map((row) =>
      withoutEmpty<RowOf<"slab">>({ at_ms: time(row, "at"), surface_c: quantity(row, "surface_c"), firm: row["firm"] ? row["firm"] === "yes" : null }),
    ),
    fills: rows("fills").map((row) => withoutEmpty<RowOf<"fills">>({ at_ms: time(row, "at"), surface_c: quantity(row, "surface_c") })),
    trays: rows("trays").map((row) =>
      withoutEmpty<RowOf<"trays">>({ laid_at_ms: time(row, "laid_at_ms"), second_at_ms: time(row, "second_at_ms"), freed_at_ms: time(row, "freed_at_ms") }),
    ),
    cut_at_ms: clock.read(form.cut_at_ms),
    weighed_kg: form.weighed_kg,
    old_kg: form.old_kg ?? null,
    under_lots: underLots(form, plan),
    lot: form.lot.trim() || null,
    nuts_clear: form.clear === "yes",
    pieces: form.pieces,
    loose_kg: form.loose_kg,
    rest_kg: form.rest_kg,
    notes: [form.who.trim() && t("paper.who", { who: form.who.trim() }), form.notes.trim()].filter((note) => note !== ""),
  };
}

/** Lots are named in the order of what lies under; none is written where nobody filled one in. */
function underLots({ under_lots = [] }: SheetForm, plan: BatchRecord["plan"]): FilledSheet["under_lots"] {
  const lots = under_lots.map((lot) => lot?.trim() || null);
  return lots.some(Boolean) ? traitsOf(plan.kind).under?.(plan).map((material, index) => ({ material, lot: lots[index] ?? null })) : [];
}

/** What a plan says of old caramel to be weighed in; 0: none. */
export const oldCaramelIn = ({ reply }: BatchRecord["plan"]): number => ("remelt" in reply && reply.remelt?.old_kg) || 0;

/** Whether its oven has power levels to be written down. */
export function hasLevels({ oven }: Partial<Pick<MeltRequest, "oven">>): boolean {
  return (oven?.levels_percent ?? []).some((level) => level < 100);
}
