import type { Advice, Run } from "../../documents";
import { armed, awake, type Batch, batches, changeSettings, engine, heldByOtherDevice, isOpen, noSound, note, now, playSound, record, redo, saveAlarm, settings, soundLocked, storage, takePhoto, undo } from "../../state";
import { t } from "../../text";
import type { ClockMark } from "../../ui/Clocks";
import { go } from "../../router";
import { labelLines } from "../LabelLines";
import { traitsOf } from "../../products/traitRegistry";
import type { Neighbour } from "./benchProps";
import { BenchView } from "./BenchView";

/** A running batch, drawn from the state; it decides nothing. */
export function BenchScreen({ batchId }: { batchId: string }) {
  const batch = batches.value.get(batchId);
  if (!batch?.advice || !batch.run) return <Waiting batch={batch} />;
  if (batch.run.closed_at_ms !== null) return <Closed batchId={batchId} run={batch.run} advice={batch.advice} />;
  return (
    <BenchView
      batchId={batchId}
      plan={batch.plan}
      events={batch.events}
      run={batch.run}
      advice={heldByOtherDevice(batch) ? watched(batch.advice) : batch.advice}
      clocks={clocksOf(batchId)}
      others={neighboursOf(batch)}
      now={now.value}
      armed={armed.value}
      soundLocked={soundLocked.value}
      pending={batch.pending}
      trouble={benchWarning(batch)}
      onRecord={(kind, body) => void record(batchId, kind, body)}
      onUndo={() => void undo(batchId)}
      onRedo={() => void redo(batchId)}
      onPhoto={async (file) => {
        const taken = await takePhoto(batchId, file);
        return typeof taken === "string" ? taken : "kept";
      }}
      onNote={(text) => note(batchId, text)}
      onCalendar={(clock) => void saveAlarm(batchId, clock, `${batch.plan.name}: ${t(`clock.${clock.name}`)}`)}
      soundTest={heardThisShift() ? null : { onPlay: () => playSound("stir"), onHeard: () => void changeSettings({ heard_at_ms: Date.now() }) }}
    />
  );
}

/** What a phone shows of a batch that another one has: everything, and one button. */
function watched(advice: Advice): Advice {
  const take = { code: "button.take_over", kind: "taken_over", body: {} };
  return { ...advice, action: take, choices: [], entry: null, undo: null, redo: null, throw_away: null };
}

const SHIFT_MS = 10 * 3_600_000;

function heardThisShift(): boolean {
  const heard = settings.value.heard_at_ms;
  return heard !== null && Math.abs(Date.now() - heard) < SHIFT_MS;
}

function Waiting({ batch }: { batch: Batch | undefined }) {
  const words = engine.value === "failed" || batch?.failure ? "desk.engine_failed" : batch ? "desk.starting" : "desk.no_such_batch";
  return (
    <main class="bench">
      <h1 class="say" aria-live="polite">
        {t(words)}
      </h1>
      <a class="bench-link bench-link-wide" href="/">
        {t("desk.place_today")}
      </a>
    </main>
  );
}

function Closed({ batchId, run, advice: { say, more } }: { batchId: string; run: Run; advice: Advice }) {
  return (
    <main class="bench" data-step="closed" data-pending="false">
      <div class="bench-mid">
        <h1 class="say">{t(say.code, say.values)}</h1>
        {more && <p class="more">{t(more.code, more.values)}</p>}
        {labelLines(run).map((line) => (
          <p key={line} class="more">
            {line}
          </p>
        ))}
      </div>
      <button type="button" class="act act-quiet" onClick={() => void undo(batchId)}>
        {t("button.undo_closing")}
      </button>
      <button type="button" class="act" onClick={() => go(`/batches/${batchId}`)}>
        {t("button.see_record")}
      </button>
    </main>
  );
}

/** The clocks of all running batches; those of another batch carry its name and lead there. */
function clocksOf(batchId: string): ClockMark[] {
  const marks: ClockMark[] = [];
  for (const [id, batch] of batches.value) {
    for (const clock of batch.advice?.clocks ?? []) {
      const other = id !== batchId;
      marks.push({
        key: `${id} ${clock.name}`,
        name: t(`clock.${clock.name}`),
        batch: other ? batch.plan.name : null,
        started_ms: clock.started_ms,
        due_ms: clock.due_ms,
        href: other ? `/bench/${id}` : null,
      });
    }
  }
  return marks;
}

/** The open bowls that a coated batch may be dipped in, and of a bowl the open batches that are. */
function neighboursOf({ batchId, plan }: Batch): Neighbour[] {
  const lends = ({ plan: { kind } }: Pick<Batch, "plan">) => traitsOf(kind).lendsChocolate === true;
  const goes = lends({ plan }) ? (one: Batch) => one.plan.coated : plan.coated ? lends : () => false;
  const found = [...batches.value.values()].filter((one) => one.batchId !== batchId && isOpen(one) && goes(one));
  return found.map((one) => ({ batchId: one.batchId, name: one.plan.name }));
}

/** The line about this phone or the batch above the prompt: the gravest that holds, or "". */
function benchWarning(batch: Batch): string {
  if (storage.value === "failed") return t("desk.cannot_keep");
  if (storage.value === "outdated") return t("desk.outdated");
  if (storage.value === "emptied") return t("desk.emptied");
  if (batch.failure) return t("desk.engine_failed");
  const other = heldByOtherDevice(batch);
  if (other) return t(other.taken ? "desk.taken_over" : "desk.elsewhere", { taken_at_ms: other.sinceMs });
  if (noSound.value) return t("desk.no_sound");
  if (awake.value === "refused" || awake.value === "missing") return t("desk.will_not_stay_awake");
  return "";
}
