import type { Action } from "../../documents";
import { t } from "../../text";
import { BigButton } from "../../ui/BigButton";
import { Caution } from "../../ui/Caution";
import { Clocks } from "../../ui/Clocks";
import { AidSign, MoreSign } from "../../ui/icons";
import { Keypad } from "../../ui/Keypad";
import type { Typing } from "../../ui/typing";
import { promptText } from "../promptText";
import { TapToRing } from "../TapToRing";
import type { BenchProps, Sheet } from "./benchProps";
import { undoOf } from "./undoOf";
import { draftKey, drafts, setDraft } from "./drafts";

interface Props extends BenchProps {
  entry: Typing;
  /** Set where the keypad was opened from a step: leads back to it. */
  onBack: (() => void) | null;
  onTake: (action: Action) => void;
  onSheet: (sheet: Sheet) => void;
}

/** The keypad screen. What else one may do stands in the button's place until something is typed. */
export function EntryView(props: Props) {
  const { batchId, advice, entry, clocks, now, armed, onBack, onTake } = props;
  const key = draftKey(batchId, entry.field);
  const use = (value: number | string) => {
    setDraft(key, "");
    props.onRecord(entry.kind, { ...entry.body, [entry.field]: value });
  };
  return (
    <main class="bench bench-entry" data-step={advice.step} data-pending={props.pending}>
      <div class="entry-line">
        <h1 class="say" aria-live="polite">
          {onBack ? t(`screen.entry_${entry.kind}`) : promptText(advice)}
        </h1>
        <Clocks clocks={clocks} now={now} strip />
      </div>
      {advice.caution && <Caution {...advice.caution} />}
      <Keypad
        entry={entry}
        text={drafts.value[key] ?? ""}
        onText={(text) => setDraft(key, text)}
        onUse={use}
        undo={undoOf(props)}
        instead={props.soundLocked ? <TapToRing /> : <Instead choice={advice.choices[0] ?? null} onBack={onBack} armed={armed} onTake={onTake} />}
        tool={
          <button type="button" class="tool" aria-label={t("button.more")} onClick={() => props.onSheet("more")}>
            <AidSign size={28} />
            <MoreSign size={28} />
          </button>
        }
        armed={armed}
      />
    </main>
  );
}

interface InsteadProps {
  choice: Action | null;
  onBack: (() => void) | null;
  armed: boolean;
  onTake: (action: Action) => void;
}

function Instead({ choice, onBack, armed, onTake }: InsteadProps) {
  if (onBack) return <BigButton tone="quiet" label={t("button.back")} onTap={onBack} />;
  if (choice) return <BigButton tone="quiet" label={t(choice.code)} armed={armed} onTap={() => onTake(choice)} />;
  return <p class="act act-empty">{t("screen.type_it")}</p>;
}
