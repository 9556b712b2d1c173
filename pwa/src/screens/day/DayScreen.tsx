import { useState } from "preact/hooks";

import { now, record, writeFact } from "../../state";
import { formatTime, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { TimeField } from "../../ui/fields";
import { DaySaid, Hours, Unplanned, useDayPlan } from "./DayStrip";
import { jobName, type Planned, plannedTasks, whenWords } from "./dayWords";

/** The plan of the days: in words, in hours, and task by task, each of which may be pinned to a time. */
export function DayScreen() {
  const plan = useDayPlan();
  return (
    <Desk title={t("schedule.title")} here="today">
      {!plan && <p class="card">{t("schedule.nothing")}</p>}
      <Unplanned />
      {plan && <DaySaid plan={plan} />}
      {plan && <Hours plan={plan} />}
      {plan && plan.asked.left_out.length > 0 && <p class="warning-line">{t("schedule.left_out", { n: plan.asked.left_out.length })}</p>}
      {plan && (
        <ul class="cards">
          {plannedTasks(plan).map((task) => (
            <TaskCard key={task.id} task={task} />
          ))}
        </ul>
      )}
      <p class="quiet">{t("schedule.times_assumed")}</p>
      <a class="go go-quiet" href="/">
        {t("button.back")}
      </a>
    </Desk>
  );
}

function TaskCard({ task }: { task: Planned }) {
  const [open, setOpen] = useState(false);
  const may = !task.begun && !/\.\d+$/.test(task.id);
  return (
    <li class="card">
      <b>{t("schedule.line", { task: t(`schedule.task_${task.name}`), name: jobName(task) })}</b>
      <p>
        {whenWords(task.startMs, now.value)} – {formatTime(task.handsEndMs)}
        {task.endMs > task.handsEndMs && ` · ${t("schedule.waits", { when: whenWords(task.endMs, now.value) })}`}
      </p>
      {task.begun && <p class="quiet">{t("schedule.begun")}</p>}
      {task.washMs !== null && <p>{t("schedule.wash", { when: whenWords(task.washMs, now.value) })}</p>}
      {task.pinned && <p>{t("schedule.pinned")}</p>}
      {may && !open && (
        <button type="button" class="go go-quiet" onClick={() => setOpen(true)}>
          {t(task.pinned ? "schedule.pin_change" : "schedule.pin")}
        </button>
      )}
      {may && open && <PinForm task={task} onDone={() => setOpen(false)} />}
    </li>
  );
}

/** Chooses a time on the day for which the task is planned; both phones then see it there. */
function PinForm({ task, onDone }: { task: Planned; onDone: () => void }) {
  const [time, setTime] = useState(clockOf(task.startMs));
  const keep = async (at_ms: number | null) => {
    if (task.batchId && (await record(task.batchId, "pinned", { task: task.name, at_ms })) === "written") onDone();
    if (task.orderId) await writeFact("order", task.orderId, "boxing_pinned", { at_ms }).then(onDone);
  };
  const at = atTime(task.startMs, time);
  return (
    <>
      <TimeField label={t("schedule.pin_at")} value={time} problem={null} onValue={setTime} />
      <div class="buttons">
        <button type="button" disabled={at === null} onClick={() => void keep(at)}>
          {t("schedule.pin_here")}
        </button>
        {task.pinned && (
          <button type="button" onClick={() => void keep(null)}>
            {t("schedule.unpin")}
          </button>
        )}
      </div>
    </>
  );
}

/** "09:05", as a time field has it. */
function clockOf(ms: number): string {
  const at = new Date(ms);
  return [at.getHours(), at.getMinutes()].map((part) => String(part).padStart(2, "0")).join(":");
}

/** The same day at a time; null: no time is typed. */
function atTime(ms: number, time: string): number | null {
  const [hours, minutes] = time.split(":").map(Number);
  return time && hours !== undefined && minutes !== undefined ? new Date(ms).setHours(hours, minutes, 0, 0) : null;
}
