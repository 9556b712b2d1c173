import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";

import type { Values } from "../../documents";
import type { BatchOrderReply } from "../../engine/types";
import { applyUpdate, type Batch, batches, batchOrder, exportUnsent, heldByOtherDevice, isAtHand, isOpen, noSound, now, offline, readOfAnotherLog, shop, soundLocked, storage, sync, updateWaiting } from "../../state";
import { formatDay, formatTime, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { formatTimeLeft } from "../../ui/timeLeft";
import { promptText } from "../promptText";
import { ServerStatus, SyncStatus } from "../SyncStatus";
import { ThrowAway, ThrownLast } from "./ThrowAway";
import { traitsOf } from "../../products/traitRegistry";
import { canPlan, NotSetUp } from "../../products/shared/NotSetUp";
import { NextBatches } from "../../products/shared/NextBatch";
import { TapToRing } from "../TapToRing";
import { Section } from "../../ui/Card";

export function TodayScreen() {
  const running = [...batches.value.values()].filter(isOpen);
  const known = shop.value;
  const bare = known && !canPlan(known) ? known : null;
  return (
    <Desk title={known?.name || t("desk.place_today")} here="today">
      {soundLocked.value && <TapToRing />}
      {noSound.value && <p class="card card-wrong">{t("desk.no_sound")}</p>}
      {isBarred() && <p class="card card-wrong">{t(`desk.offline_${offline.value}`)}</p>}
      <Unpaired />
      <ThrownLast />
      {running.length === 0 ? <p class="card">{t("desk.nothing_runs")}</p> : <Running running={running} />}
      <NextBatches />
      <LazyDayStrip />
      {bare && <NotSetUp shop={bare} />}
      <a class={bare ? "go go-quiet" : "go"} href="/plan">
        {t("desk.plan_slab")}
      </a>
      <State running={running.some(isAtHand)} />
    </Desk>
  );
}

/** The hours of the day, fetched after the bench. */
function LazyDayStrip() {
  const [found, setFound] = useState<{ Strip: ComponentType } | null>(null);
  useEffect(() => void import("../places/day").then(({ DayStrip }) => setFound({ Strip: DayStrip })).catch(() => {}), []);
  return found && <found.Strip />;
}

/** The server knows this phone no more, or not yet; or takes nothing from it. */
function Unpaired() {
  const { role, unsent } = sync.value;
  if (role === "reader" && unsent > 0) return <p class="card">{t("desk.reader_keeps")}</p>;
  if (role !== "none") return null;
  return (
    <div class="card card-wrong">
      <p>{t("desk.not_paired")}</p>
      <a class="go" href="/pair">
        {t("button.pair")}
      </a>
    </div>
  );
}

/** Without a network it will never work here as it was opened. */
function isBarred(): boolean {
  return offline.value !== "ready" && offline.value !== "not_ready";
}

/** The running batches; where several share the bench, in the order to take them, with the wash between. */
function Running({ running }: { running: Batch[] }) {
  const sharing = [...batches.value.values()].filter((batch) => !traitsOf(batch.plan.kind).standsAlone).length > 1;
  const order = sharing ? (batchOrder.value?.order ?? []) : [];
  const turnOf = (batch: Batch) => order.find((one) => one.id === batch.batchId);
  // What takes no part in it stands behind.
  const place = (batch: Batch) => order.findIndex((one) => one.id === batch.batchId) >>> 0;
  const sorted = [...running].sort((a, b) => place(a) - place(b));
  return (
    <Section title={t("desk.running", { n: running.length })}>
      {order.length > 1 && <p class="quiet">{t("day.order")}</p>}
      <ul class="cards">
        {sorted.map((batch) => (
          <RunningCard key={batch.batchId} batch={batch} turn={turnOf(batch)} />
        ))}
      </ul>
      {order.length > 0 && batchOrder.value?.warnings.map((one) => <p key={one.code} class="quiet">{t(`warning.${one.code}`, one.values as Values)}</p>)}
    </Section>
  );
}

/** A running batch; with its turn in the day, what it contains and the wash before it. */
function RunningCard({ batch, turn }: { batch: Batch; turn: BatchOrderReply["order"][number] | undefined }) {
  const may = batch.run?.may_contain ?? [];
  const names = turn?.after.map((id) => batches.value.get(id)?.plan.name ?? "") ?? [];
  return (
    <li>
      {turn && turn.wash.length > 0 && (
        <p class="wash">
          <b>{t("day.wash", { allergens: turn.wash })}</b> <span>{t("day.after", { after: names })}</span>
        </p>
      )}
      <a class="card batch-card" href={`/bench/${batch.batchId}`}>
        <b>{batch.plan.name}</b>
        <span>{batch.advice ? promptText(batch.advice) : t("desk.starting")}</span>
        {turn && <span>{holdsWords(batch)}</span>}
        {may.length > 0 && <span>{t("day.may_hold", { allergens: may })}</span>}
        {heldByOtherDevice(batch) && <span>{t("desk.on_another_phone")}</span>}
        <NextClock batch={batch} />
      </a>
      {!heldByOtherDevice(batch) && batch.advice?.throw_away && <ThrowAway batch={batch} action={batch.advice.throw_away} />}
    </li>
  );
}

/** What it contains by its labels and what lies under it; a label that nobody copied is said to be none. */
function holdsWords({ run }: Batch): string {
  const { contains = [], labels_known = false } = run ?? {};
  const some = contains.length > 0 ? "holds" : "holds_none";
  return t(labels_known ? `day.${some}` : contains.length > 0 ? "day.holds_some" : "day.holds_unknown", { allergens: contains });
}

function NextClock({ batch }: { batch: Batch }) {
  const clock = batch.advice?.clocks[0];
  if (!clock) return null;
  return (
    <span class="batch-clock">
      <strong>{formatTimeLeft(clock.due_ms - now.value)}</strong> {t(`clock.${clock.name}`)} · {formatTime(clock.due_ms)}
    </span>
  );
}

/** Whether the phone can do without a network, and what the server has. */
function State({ running }: { running: boolean }) {
  const { reachable, role, trouble, unsentSince, unsentPhotos, refused, persistent, anotherLogSince, certificateUntil } = sync.value;
  return (
    <section class="state">
      <h2>{t("desk.this_phone")}</h2>
      {!isBarred() && <p>{t(`desk.offline_${offline.value}`)}</p>}
      <ServerStatus />
      {reachable === false && !trouble && role !== "none" && location.protocol === "https:" && navigator.onLine && <p class="quiet">{t("desk.server_untrusted")}</p>}
      {certificateUntil !== null && <CertificateEnds until={certificateUntil} />}
      <SyncStatus />
      {anotherLogSince !== null && <AnotherLog since={anotherLogSince} />}
      {unsentSince !== null && now.value - unsentSince > LONG_UNSENT_MS && <LongUnsent since={unsentSince} />}
      {persistent === false && <p class="warning-line">{t("settings.persistent_no")}</p>}
      {unsentPhotos > 0 && <p>{t("desk.unsent_photos", { n: unsentPhotos })}</p>}
      {refused.length > 0 && <p class="warning-line">{t("desk.refused", { n: refused.length })}</p>}
      {storage.value === "outdated" && <p class="warning-line">{t("desk.outdated")}</p>}
      {storage.value === "emptied" && <p class="warning-line">{t("desk.emptied")}</p>}
      {updateWaiting.value && <Update waits={running} />}
    </section>
  );
}

/** The certificate is renewed by itself long before; whoever reads this has a server that does not. */
function CertificateEnds({ until }: { until: number }) {
  const n = Math.floor((until - now.value) / DAY_MS);
  if (n > CERTIFICATE_SAID_DAYS) return null;
  return <p class="warning-line">{t(n < 0 ? "desk.certificate_ended" : "desk.certificate_ends", { n, until: formatDay(until) })}</p>;
}

const DAY_MS = 24 * 3_600_000;
const CERTIFICATE_SAID_DAYS = 30;

/** Facts that only this phone has for longer than this are worth a file (ms). Common practice, no published source. */
const LONG_UNSENT_MS = DAY_MS;

function LongUnsent({ since }: { since: number }) {
  return (
    <>
      <p class="warning-line">{t("desk.unsent_long", { since: formatDay(since) })}</p>
      <button type="button" class="go go-quiet" onClick={() => void exportUnsent()}>
        {t("button.save_unsent")}
      </button>
    </>
  );
}

/** The server lost its log, or has another one: said until somebody has read it. */
function AnotherLog({ since }: { since: number }) {
  return (
    <>
      <p class="warning-line">{t("desk.another_log", { since: formatDay(since) })}</p>
      <button type="button" class="go go-quiet" onClick={() => void readOfAnotherLog()}>
        {t("button.understood")}
      </button>
    </>
  );
}

/** A new version is never put under somebody's hands. */
function Update({ waits }: { waits: boolean }) {
  if (waits) return <p>{t("desk.update_waits")}</p>;
  return (
    <button type="button" class="go go-quiet" onClick={() => applyUpdate()}>
      {t("button.take_update")}
    </button>
  );
}
