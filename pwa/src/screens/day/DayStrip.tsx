import { useEffect } from "preact/hooks";

import { batches, now, orders, packs, shop } from "../../state";
import { formatNumber, formatTime, t } from "../../text";
import { Section } from "../../ui/Card";
import { nameOf } from "../orders/orderWords";
import { type DayPlan, dayPlan, planDay, stopPlanning, unplanned } from "./dayPlan";
import { jobName, type Planned, plannedTasks, whenWords } from "./dayWords";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/** The plan of the days, kept up as long as somebody looks; null: nothing is planned. */
export function useDayPlan(): DayPlan | null {
  const minute = Math.floor(now.value / MINUTE_MS);
  useEffect(() => void planDay(), [minute, batches.value, orders.value, packs.value, shop.value]);
  useEffect(() => stopPlanning, []);
  return dayPlan.value;
}

/** On the first screen: what comes next, what is late, and the hours of the day. */
export function DayStrip() {
  const plan = useDayPlan();
  const isPlanned = plan !== null && plan.asked.rows.length > 0;
  if (!isPlanned && unplanned.value.length === 0) return null;
  return (
    <Section title={t("schedule.title")}>
      <Unplanned />
      {isPlanned && <DaySaid plan={plan} />}
      {isPlanned && <Hours plan={plan} />}
      <a class="go go-quiet" href="/day">
        {t("schedule.open")}
      </a>
    </Section>
  );
}

/** What open orders want that is in no plan yet, and the way to plan it. */
export function Unplanned() {
  if (unplanned.value.length === 0) return null;
  const what = unplanned.value.map(({ product_id, wanted }) => `${formatNumber(wanted, 0)} × ${nameOf({ box_id: null, product_id })}`).join(", ");
  return (
    <p class="warning-line">
      {t("schedule.unplanned", { what })} <a href="/orders/needs">{t("orders.plan_missing")}</a>
    </p>
  );
}

/** In words: what comes next, what will be late and what would help, where a pin cannot stand, what is to spare. */
export function DaySaid({ plan }: { plan: DayPlan }) {
  const { reply, beforeMs, asked } = plan;
  const tasks = plannedTasks(plan);
  const next = tasks.find((one) => !one.begun);
  const at = (s: number) => whenWords(asked.start_ms + s * 1000, now.value);
  const named = (id: string) => tasks.find((one) => one.id === id);
  return (
    <>
      {next && (
        <p>
          <b>{t("schedule.next", { task: t(`schedule.task_${next.name}`), name: jobName(next), when: whenWords(next.startMs, now.value) })}</b>
        </p>
      )}
      {beforeMs !== null && <p class="warning-line">{t("schedule.behind", { now: at(reply.end_s), before: whenWords(beforeMs, now.value) })}</p>}
      {reply.jobs.filter((job) => job.late_s > 0).map((job) => (
        <p key={job.id} class="warning-line">
          {t("schedule.late", { name: jobName(tasks.find((one) => jobOf(one) === job.id) ?? { batchId: null, orderId: null }), minutes: Math.round(job.late_s / 60), when: at(job.end_s) })}
        </p>
      ))}
      {reply.helps.slice(0, 2).map((one) => (
        <p key={one.name}>{t("schedule.helps", { thing: t(`schedule.thing_${one.name}`), n: one.late_jobs })}</p>
      ))}
      {reply.conflicts.map(({ task, wants }) => {
        const waits = named(wants);
        const thing = waits ? `${t(`schedule.task_${waits.name}`)}, ${jobName(waits)}` : t(`schedule.thing_${wants}`);
        const own = named(task);
        return own && <p key={task} class="warning-line">{t("schedule.conflict", { task: t(`schedule.task_${own.name}`), name: jobName(own), thing })}</p>;
      })}
      <p class="quiet">{t("schedule.done_by", { when: at(reply.end_s) })}</p>
    </>
  );
}

function jobOf(task: Planned): string {
  return task.orderId === null ? task.job : `order/${task.orderId}`;
}

/** Hours across, a row for each batch and order: full where hands are on it, pale where it waits. */
export function Hours({ plan }: { plan: DayPlan }) {
  const tasks = plannedTasks(plan);
  const left = tasks.filter((one) => one.endMs > now.value).map((one) => one.startMs);
  // After a day off it begins with the first task.
  const first = Math.max(now.value - HOUR_MS, Math.min(...left));
  const from = Math.floor((first > now.value + DAY_MS / 2 ? first : Math.min(now.value, first)) / HOUR_MS) * HOUR_MS;
  const day = tasks.filter((one) => one.endMs > from && one.startMs < from + DAY_MS);
  const to = Math.min(from + DAY_MS, Math.ceil(Math.max(from + 4 * HOUR_MS, ...day.map((one) => one.endMs)) / HOUR_MS) * HOUR_MS);
  const across = (ms: number) => `${((Math.min(to, Math.max(from, ms)) - from) / (to - from)) * 100}%`;
  const width = (a: number, b: number) => `${((Math.min(to, Math.max(from, b)) - Math.min(to, Math.max(from, a))) / (to - from)) * 100}%`;
  const step = Math.max(1, Math.ceil((to - from) / HOUR_MS / 5));
  const marks = Array.from({ length: Math.floor((to - from) / HOUR_MS / step) }, (_, n) => from + n * step * HOUR_MS);
  const jobs = [...new Set(day.map(jobOf))];
  return (
    <div class="hours">
      <div class="hours-row hours-marks" aria-hidden="true">
        {marks.map((ms) => (
          <span key={ms} style={{ left: across(ms) }}>
            {formatTime(ms)}
          </span>
        ))}
      </div>
      {jobs.map((job) => {
        const own = day.filter((one) => jobOf(one) === job);
        return (
          <div key={job}>
            <p class="hours-name">{jobName(own[0]!)}</p>
            <div class="hours-row" role="img" aria-label={own.map((one) => `${t(`schedule.task_${one.name}`)} ${whenWords(one.startMs, now.value)}`).join(", ")}>
              {own.map((one) => (
                <>
                  <i key={`${one.id} waits`} class="hours-wait" style={{ left: across(one.handsEndMs), width: width(one.handsEndMs, one.endMs) }} />
                  <i key={one.id} class={one.pinned ? "hours-hands hours-pinned" : "hours-hands"} style={{ left: across(one.startMs), width: width(one.startMs, one.handsEndMs) }} />
                </>
              ))}
              <i class="hours-now" style={{ left: across(now.value) }} />
            </div>
          </div>
        );
      })}
    </div>
  );
}

const DAY_MS = 24 * HOUR_MS;
