import { useState } from "preact/hooks";

import type { Action, Advice, EventButton, LotLeft } from "../../documents";
import { t } from "../../text";
import { BenchBar } from "../../ui/BenchBar";
import { BigButton, SideButton } from "../../ui/BigButton";
import { BigNumber } from "../../ui/BigNumber";
import { Caution } from "../../ui/Caution";
import { type ClockMark, Clocks } from "../../ui/Clocks";
import type { Typing } from "../../ui/typing";
import { AidSheet } from "./AidSheet";
import type { BenchProps, Sheet } from "./benchProps";
import { EntryView } from "./EntryView";
import { hasSheet } from "../../products/traitRegistry";
import { benchViewsOf } from "../../products/benchViews";
import { MoreSheet } from "./MoreSheet";
import { NoteSheet } from "./NoteSheet";
import { promptText } from "../promptText";
import { TapToRing } from "../TapToRing";
import { PeopleSheet, whoWords } from "../WhoIsHere";
import { useShortScreen } from "./shortScreen";
import { undoOf } from "./undoOf";
import { useLots } from "./useLots";
import { WhySheet } from "./WhySheet";

/** A clock that runs so much longer is worth a calendar entry (ms). */
const LONG_MS = 10 * 60_000;

/** What run.advise says, and nothing else. */
export function BenchView(props: BenchProps) {
  const { advice } = props;
  const { Map } = benchViewsOf(props.plan.kind);
  const [sheet, setSheet] = useState<Sheet>("none");
  const [opened, setOpened] = useState<Typing | null>(null);
  const stillOffered = opened !== null && offers(advice, opened.kind);
  const entry = stillOffered ? opened : advice.action ? null : advice.entry;
  const lots = useLots(props);
  const record = (kind: string, body: Record<string, unknown>) => {
    setOpened(null);
    setSheet("none");
    props.onRecord(kind, lots.withTaken(kind, body));
  };
  const takeLots = (chosen: LotLeft[]) => {
    const written = lots.take(chosen);
    if (written) record(written.kind, written.body);
  };
  const [asked, setAsked] = useState<EventButton | null>(null);
  const take = (action: Action) => {
    setSheet("none");
    if (action.entry) return setOpened(action.entry);
    const [only, ...more] = action.reasons ?? [];
    if (more.length === 0) return record(action.kind, only === undefined ? action.body : { ...action.body, reason: only });
    setAsked(action);
    setSheet("why");
  };
  const long = advice.clocks.filter((clock) => clock.due_ms - props.now > LONG_MS);
  return (
    <>
      {lots.Page && !stillOffered ? (
        <lots.Page {...props} offered={lots.offered} onTaken={takeLots} onSheet={setSheet} />
      ) : entry ? (
        <EntryView {...props} entry={entry} onBack={stillOffered ? () => setOpened(null) : null} onTake={take} onRecord={record} onSheet={setSheet} />
      ) : (
        <StepView {...props} rest={lots.rest} onTake={take} onSheet={setSheet} />
      )}
      {sheet === "aid" && <AidSheet onClose={() => setSheet("none")} />}
      {sheet === "more" && (
        <MoreSheet
          sheetAt={hasSheet(props.plan) ? `/batches/${props.batchId}/sheet` : null}
          advice={advice}
          others={props.others}
          long={long}
          onCalendar={props.onCalendar}
          onAid={() => setSheet("aid")}
          onNote={() => setSheet("note")}
          who={whoWords()}
          onWho={() => setSheet("who")}
          onPhoto={props.onPhoto}
          onTake={take}
          onClose={() => setSheet("none")}
        />
      )}
      {sheet === "who" && <PeopleSheet onClose={() => setSheet("none")} />}
      {sheet === "note" && <NoteSheet onKeep={props.onNote} onClose={() => setSheet("none")} />}
      {sheet === "why" && asked && <WhySheet asked={asked} onTell={(why) => record(asked.kind, { ...asked.body, ...why })} onClose={() => setSheet("none")} />}
      {sheet === "map" && Map && <Map plan={props.plan} onClose={() => setSheet("none")} />}
    </>
  );
}

/** The big number is the clock itself, or the prompt is what it was due for: no card says it again. */
function isOnScreen(clock: ClockMark, { number }: Advice, now: number): boolean {
  if (clock.href !== null) return false;
  return clock.due_ms <= now || (number?.name === "due_ms" && clock.due_ms === number.value);
}

/** The clock that the big number counts down. */
function counted<Mark extends { due_ms: number }>({ number }: Advice, clocks: Mark[]): Mark | undefined {
  return clocks.find((clock) => number?.name === "due_ms" && clock.due_ms === number.value);
}

function offers(advice: Advice, kind: string): boolean {
  return [advice.action, ...advice.choices].some((one) => one?.entry?.kind === kind);
}

interface StepProps extends BenchProps {
  /** What was weighed back and is no lot yet. */
  rest: { amount: number; keep: () => Promise<void> } | null;
  onTake: (action: Action) => void;
  onSheet: (sheet: Sheet) => void;
}

function StepView(props: StepProps) {
  const { advice, plan, events, run, clocks, now, pending, trouble, onTake, onSheet } = props;
  const short = useShortScreen();
  const views = benchViewsOf(plan.kind);
  const { number, action } = advice;
  const sides = advice.choices.filter((one) => one.kind !== "step_skipped");
  // Beside a number there is room for one more button; the others are under More.
  const beside = number && action ? sides.slice(0, 1) : [];
  const below = number && action ? [] : sides;
  // Big digits alone do not say what they count down to.
  const called = counted(advice, clocks.filter((one) => one.href === null))?.name ?? "";
  const others = clocks.filter((clock) => !isOnScreen(clock, advice, now));
  return (
    <main class={number || views.hasPicture?.(advice.step) ? "bench" : "bench bench-words"} data-step={advice.step} data-pending={pending}>
      <BenchBar
        {...undoOf(props)}
        onAid={() => onSheet("aid")}
        onMore={() => onSheet("more")}
      />
      <Clocks clocks={others} now={now} strip={short} />
      <Words advice={advice} trouble={trouble} short={short}>
        {views.Picture && <views.Picture plan={plan} events={events} run={run} advice={advice} now={now} onMap={() => onSheet("map")} />}
      </Words>
      {advice.caution && <Caution {...advice.caution} />}
      <div class="bench-foot">
        {number && (
          <div class="number-row">
            <BigNumber number={number} now={Math.max(now, counted(advice, advice.clocks)?.started_ms ?? 0)} name={called} />
            <Sides actions={beside} onTake={onTake} />
          </div>
        )}
        {props.soundLocked ? <TapToRing /> : <Foot {...props} below={below} />}
      </div>
    </main>
  );
}

/** What one may do here: the other buttons, and the big one below them. */
function Foot({ advice: { action, number }, below, rest, soundTest, armed, onTake }: StepProps & { below: Action[] }) {
  return (
    <>
      {!action && number && soundTest && <SoundTest {...soundTest} />}
      {(below.length > 0 || rest) && (
        <div class="sides">
          <Sides actions={below} onTake={onTake} />
          {rest && <SideButton label={t("button.keep_rest", { rest_kg: rest.amount })} onTap={() => void rest.keep()} />}
        </div>
      )}
      {action && <Main action={action} armed={armed} onTake={onTake} />}
    </>
  );
}

/** A muted phone is a burnt batch: play it once, and say that it was heard. */
function SoundTest({ onPlay, onHeard }: NonNullable<BenchProps["soundTest"]>) {
  const [state, setState] = useState<"fresh" | "played" | "silent">("fresh");
  const play = () => {
    setState("played");
    onPlay();
  };
  if (state === "played") {
    return (
      <div class="sides">
        <SideButton label={t("button.heard_it")} onTap={onHeard} />
        <SideButton label={t("button.not_heard")} onTap={() => setState("silent")} />
      </div>
    );
  }
  return (
    <>
      {state === "silent" && <p class="more">{t("screen.not_heard")}</p>}
      <div class="sides">
        <SideButton label={t(state === "silent" ? "button.play_again" : "button.try_sound")} onTap={play} />
      </div>
    </>
  );
}

interface WordsProps {
  advice: Advice;
  trouble: string;
  short: boolean;
  children: preact.ComponentChildren;
}

/** The prompt; what belongs to it and the picture in the room that is left. */
function Words({ advice, trouble, short, children }: WordsProps) {
  const crowded = short && advice.caution && (advice.number || trouble);
  return (
    <div class="bench-mid">
      <h1 class="say" aria-live="polite">
        {promptText(advice)}
      </h1>
      {trouble && <p class="more trouble">{trouble}</p>}
      <div class="bench-room">
        {advice.more && !crowded && <p class="more">{t(advice.more.code, advice.more.values)}</p>}
        {children}
      </div>
    </div>
  );
}

function Sides({ actions, onTake }: { actions: Action[]; onTake: (action: Action) => void }) {
  return (
    <>
      {actions.map((action) => (
        <SideButton key={action.code} label={t(action.code)} onTap={() => onTake(action)} />
      ))}
    </>
  );
}

/** A button that opens the keypad is quiet: the amber one changes the batch. */
function Main({ action, armed, onTake }: { action: Action; armed: boolean; onTake: (action: Action) => void }) {
  return <BigButton label={t(action.code)} tone={action.entry ? "quiet" : "now"} armed={armed} onTap={() => onTake(action)} />;
}
