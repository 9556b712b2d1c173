import { batches, orders } from "../../state";
import { formatDay, formatTime, t } from "../../text";
import type { DayPlan } from "./dayPlan";

/** One task of the plan as it is drawn and said. */
export interface Planned {
  id: string;
  /** The batch or order it is of. */
  job: string;
  batchId: string | null;
  orderId: string | null;
  /** What its log calls it: the key of its word. */
  name: string;
  startMs: number;
  handsEndMs: number;
  endMs: number;
  washMs: number | null;
  begun: boolean;
  pinned: boolean;
}

/** The tasks by their start. */
export function plannedTasks({ asked, reply }: DayPlan): Planned[] {
  const at = (s: number) => asked.start_ms + s * 1000;
  const all = asked.rows.map((row, index) => {
    const task = reply.tasks[index]!;
    return {
      id: row.id,
      job: row.batch_id ?? row.order_id ?? "",
      batchId: row.batch_id,
      orderId: row.order_id,
      name: row.name,
      begun: row.begun,
      pinned: row.pinned,
      startMs: at(task.start_s),
      handsEndMs: at(task.hands_end_s),
      endMs: at(task.end_s),
      washMs: task.wash_s === null ? null : at(task.wash_s),
    };
  });
  return all.sort((a, b) => a.startMs - b.startMs || a.id.localeCompare(b.id));
}

/** "Sea salt squares" or "Corner bakery". */
export function jobName({ batchId, orderId }: Pick<Planned, "batchId" | "orderId">): string {
  if (batchId !== null) return batches.value.get(batchId)?.plan.name ?? "";
  return orders.value.get(orderId ?? "")?.customer || t("orders.nobody");
}

/** "10:20", with its day where that is another one. */
export function whenWords(ms: number, nowMs: number): string {
  return new Date(ms).toDateString() === new Date(nowMs).toDateString() ? formatTime(ms) : formatDay(ms);
}
