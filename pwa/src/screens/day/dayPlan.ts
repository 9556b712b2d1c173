/** The plan of the days, asked of the engine at the desk: a first one at once, then better ones as long as nobody waits. */
import { signal } from "@preact/signals";

import type { ScheduleTasksReply, ScheduleTasksRequest, SchedulePlanReply, Shop } from "../../documents";
import { batches, isOpen, loadTrade, midnightOf, now, orders, ordersOverview, plan, shop } from "../../state";
import { needs } from "../orders/needs";

export interface DayPlan {
  asked: ScheduleTasksReply;
  reply: SchedulePlanReply;
  /** When all was to be done by the plan that stood before something ran late (ms); null: it is the first. */
  beforeMs: number | null;
}

/** Good pieces, by product, that open orders want and nobody has planned: their boxes are in no plan yet. */
export const unplanned = signal<Unplanned>([]);

type Unplanned = { product_id: string; wanted: number }[];
type OpenOrders = NonNullable<ScheduleTasksRequest["orders"]>;

/** null: nothing is planned, or nobody has asked yet. */
export const dayPlan = signal<DayPlan | null>(null);

const DAYS = 7;
const WEEKDAYS = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"] as const;
/** So often all tasks are placed in one go: a plan form waits no longer than that. */
const ROUNDS = 10;
/** So long in all a plan is improved (ms). */
const IMPROVE_MS = 8_000;
const MOST = 40;

let looking = 0;
let turn = 0;
let asked = "";
/** Which tasks and pins the plan is of, and when all was to be done by the first plan of them. */
let standing = { of: "", endMs: 0 };

function daysFrom(ms: number): ScheduleTasksRequest["days"] {
  return Array.from({ length: DAYS }, (_, n) => {
    const at = new Date(midnightOf(ms));
    at.setDate(at.getDate() + n);
    return { weekday: WEEKDAYS[at.getDay()]!, midnight_ms: at.getTime(), noon_ms: at.setHours(12) };
  });
}

async function openOrders(): Promise<OpenOrders> {
  await loadTrade();
  const { orders: rows } = await ordersOverview();
  return rows.slice(0, MOST).map(({ order_id, lines }) => {
    const order = orders.value.get(order_id);
    return {
      order_id,
      pinned_ms: order?.pinned_ms ?? null,
      wanted_ms: order?.counter ? null : (order?.wanted_ms ?? null),
      // Loose by weight: one of it stands for all.
      lines: lines.map(({ box_id, product_id, missing, mass_kg }) => ({ box_id, product_id, missing: mass_kg === null ? missing : Math.min(1, missing) })),
    };
  });
}

/** The orders that can be boxed with what is made and planned: what is missing, those wanted last lack first. */
export function boxable(open: OpenOrders, missing: Unplanned, boxes: Shop["boxes"]): OpenOrders {
  const lacking = new Map(missing.map(({ product_id, wanted }) => [product_id, wanted]));
  const wantsOf = ({ lines }: OpenOrders[number]) => lines.flatMap(({ box_id, product_id, missing }) => (box_id ? (boxes.find((one) => one.id === box_id)?.lines ?? []).map((one) => ({ id: one.product_id, pieces: one.count * missing })) : [{ id: product_id ?? "", pieces: missing }]));
  const kept: OpenOrders = [];
  for (let nth = open.length - 1; nth >= 0; nth--) {
    const order = open[nth]!;
    const short = wantsOf(order).filter(({ id, pieces }) => pieces > 0 && (lacking.get(id) ?? 0) > 0);
    for (const { id, pieces } of short) lacking.set(id, lacking.get(id)! - pieces);
    if (short.length === 0) kept.unshift(order);
  }
  return kept;
}

/** Plans the days anew where anything has changed. Never rejects. */
export async function planDay(): Promise<void> {
  const mine = ++looking;
  try {
    const at = now.value;
    const lacking = await needs();
    if (!lacking) return;
    const { products } = lacking.needs;
    const all = [...batches.value.values()].filter((one) => one.run !== null);
    const request: ScheduleTasksRequest = {
      shop: shop.value ?? {},
      days: daysFrom(at),
      now_ms: at,
      batches: all.filter(isOpen).slice(0, MOST).map(({ batchId, plan: document, run }) => ({ id: batchId, plan: document, run: run! })),
      orders: boxable(await openOrders(), products, shop.value?.boxes ?? []),
      closed: all.filter((one) => !isOpen(one)).map(({ plan: document, run }) => ({ plan: document, run: run! })),
    } as ScheduleTasksRequest;
    const told = JSON.stringify({ ...request, now_ms: Math.floor(at / 60_000) });
    if (mine !== looking || told === asked) return;
    asked = told;
    unplanned.value = products;
    await improve(++turn, request);
  } catch (error) {
    console.error("no plan of the day:", error);
  }
}

async function improve(mine: number, request: ScheduleTasksRequest): Promise<void> {
  const tasks = (await plan("schedule.tasks", request))?.reply;
  if (!tasks || mine !== turn) return;
  const begun = performance.now();
  let order = dayPlan.value?.reply.order ?? [];
  for (let rounds = 1, seed = 1; tasks.rows.length > 0; rounds = ROUNDS, seed++) {
    const reply = (await plan("schedule.plan", { ...tasks.day, rounds, seed, order }))?.reply;
    if (!reply || mine !== turn) return;
    take(tasks, reply);
    order = reply.order;
    if (reply.rounds < rounds || performance.now() - begun > IMPROVE_MS) return;
  }
  dayPlan.value = null;
}

function take(tasks: ScheduleTasksReply, reply: SchedulePlanReply): void {
  const of = JSON.stringify(tasks.rows.map(({ id, pinned }) => [id, pinned]));
  const endMs = tasks.start_ms + reply.end_s * 1000;
  if (standing.of !== of || endMs < standing.endMs) standing = { of, endMs };
  dayPlan.value = { asked: tasks, reply, beforeMs: endMs - standing.endMs >= LATE_MS ? standing.endMs : null };
}

/** Less is said by nobody to be late (ms). */
const LATE_MS = 10 * 60_000;

/** Stops improving: nobody looks. */
export function stopPlanning(): void {
  looking++;
  turn++;
  asked = "";
}
