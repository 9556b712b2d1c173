import type { ComponentChildren } from "preact";

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
  bursts: ["at", "seconds_s", "free", "surface_c"],
  slab: ["at", "surface_c", "firm"],
  fills: ["at", "surface_c"],
  trays: ["laid_at_ms", "second_at_ms", "freed_at_ms"],
};
export type Table = "bursts" | "slab" | "fills" | "trays";

const UNIT = /_[sc]$/;
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
  clear: string;
  poured_at_ms: string;
  cut_at_ms: string;
  pieces: number | null;
  loose_kg: number | null;
  rest_kg: number | null;
}

/** What draws the boxes of a sheet that is typed back; labels are keys. */
export interface BoxTools {
  number(name: "weighed_kg" | "pieces" | "rest_kg" | "loose_kg", label?: string): ComponentChildren;
  time(name: "weighed_at_ms" | "poured_at_ms" | "cut_at_ms"): ComponentChildren;
  /** Whether the bench is clear of what the batch does not declare. */
  clear(): ComponentChildren;
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
export function sheetOf(form: SheetForm): FilledSheet {
  const clock = new KitchenClock(form.day || dayOf(Date.now()));
  // A sheet that was begun by an older form lacks what is newer.
  const rows = (table: Table) => (form[table] ?? []).filter((row) => !isRowEmpty(row));
  const time = (row: Row, box: string) => clock.read(String(row[box] ?? ""));
  const quantity = (row: Row, box: string) => (typeof row[box] === "number" ? row[box] : null);
  return {
    // In the order the kitchen's clock went.
    weighed_at_ms: clock.read(form.weighed_at_ms),
    bursts: rows("bursts").map((row) =>
      withoutEmpty<RowOf<"bursts">>({ at_ms: time(row, "at"), seconds_s: quantity(row, "seconds_s"), free: row["free"] === "yes", surface_c: quantity(row, "surface_c") }),
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
    lot: form.lot.trim() || null,
    nuts_clear: form.clear === "yes",
    pieces: form.pieces,
    loose_kg: form.loose_kg,
    rest_kg: form.rest_kg,
    notes: [form.who.trim() && t("paper.who", { who: form.who.trim() }), form.notes.trim()].filter((note) => note !== ""),
  };
}
