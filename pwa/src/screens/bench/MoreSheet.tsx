import type { Action, Advice, Clock, EventButton } from "../../documents";
import { t } from "../../text";
import { Caution } from "../../ui/Caution";
import { AidSign } from "../../ui/icons";
import { Sheet } from "../../ui/Sheet";
import { type PhotoOutcome, TakePhoto } from "../../ui/TakePhoto";
import type { Neighbour } from "./benchProps";

interface Props {
  /** Where the batch stands as a paper sheet; null: it has none. */
  sheetAt: string | null;
  advice: Advice;
  /** The benches of batches that go with this one. */
  others: Neighbour[];
  /** The running clocks that last long enough for the phone's calendar. */
  long: Clock[];
  onCalendar: (clock: Clock) => void;
  onAid: () => void;
  onNote: () => void;
  /** Who is at this phone, in words; null: the shop lists nobody. */
  who: string | null;
  onWho: () => void;
  onPhoto: (file: File) => Promise<PhotoOutcome>;
  onTake: (action: Action) => void;
  onClose: () => void;
}

/** Everything else one may do at this step: first aid first, skipping last. */
export function MoreSheet({ sheetAt, advice, others, long, onCalendar, onAid, onNote, who, onWho, onPhoto, onTake, onClose }: Props) {
  return (
    <Sheet title={t("screen.more_title")} onClose={onClose}>
      <button type="button" class="side" onClick={onAid}>
        <AidSign size={44} />
        {t("button.first_aid_burn")}
      </button>
      {advice.caution && <Caution {...advice.caution} />}
      {others.map(({ batchId, name }) => (
        <a key={batchId} class="bench-link" href={`/bench/${batchId}`}>
          {t("button.go_to", { name })}
        </a>
      ))}
      {advice.choices.map((choice) => (
        <button key={choice.code} type="button" class="side" onClick={() => onTake(choice)}>
          {choice.kind === "step_skipped" ? t("button.skip_this") : t(choice.code)}
        </button>
      ))}
      {long.map((clock) => (
        <button key={clock.name} type="button" class="side" onClick={() => (onClose(), onCalendar(clock))}>
          {t("button.into_calendar")}
          {long.length > 1 && `: ${t(`clock.${clock.name}`)}`}
        </button>
      ))}
      <div class="two">
        <button type="button" class="side" onClick={onNote}>
          {t("button.write_note")}
        </button>
        <TakePhoto look="side" onPick={onPhoto} />
      </div>
      {who && (
        <button type="button" class="side" onClick={onWho}>
          {who}
        </button>
      )}
      {sheetAt && (
        <a class="bench-link" href={sheetAt}>
          {t("button.sheet")}
        </a>
      )}
      <a class="bench-link" href="/">
        {t("screen.today")}
      </a>
      {advice.throw_away && <ThrowAway action={advice.throw_away} onTake={onTake} />}
    </Sheet>
  );
}

/** One that was never begun is called back; one that was is thrown away for a reason. */
function ThrowAway({ action, onTake }: { action: EventButton; onTake: (action: Action) => void }) {
  return (
    <button type="button" class="side" onClick={() => onTake(action)}>
      {t(action.reasons?.length === 1 ? "button.call_back" : action.code)}
    </button>
  );
}
