import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";

import { dimensionOf, format, formatRange, t } from "../text";
import { BigButton } from "./BigButton";
import { Digits } from "./BigNumber";
import { BackSign, ClearSign } from "./icons";
import { bandWords, isWord, outOfRangeMessage, pressed, sideKey, typedUnit, typedValue, type Typing } from "./typing";

interface Props {
  entry: Typing;
  text: string;
  onText: (text: string) => void;
  onUse: (value: number | string) => void;
  /** What undo would take back, while nothing is typed. */
  undoes: string | null;
  onUndo: () => void;
  /** Shown where the button stands while nothing is typed. */
  instead: ComponentChildren;
  tool: ComponentChildren;
  armed: boolean;
}

/** Our own keypad: what was typed large, what is expected beside it, one tap to send it. */
export function Keypad({ entry, text, onText, onUse, undoes, onUndo, instead, tool, armed }: Props) {
  const [asked, setAsked] = useState<string | null>(null);
  const value = typedValue(text, entry);
  const change = (next: string) => {
    setAsked(null);
    onText(next);
  };
  const use = () => {
    const question = outOfRangeMessage(value, entry);
    if (question) setAsked(question);
    else if (value !== null) onUse(value);
  };
  return (
    <section class="entry" aria-label={t("screen.keypad")}>
      <div class="entry-head">
        <output class={isWord(entry) ? "typed typed-word" : "typed"} aria-label={t("screen.typed")}>
          <Digits text={text || "–"} unit={typedUnit(entry)} most={isWord(entry) ? 7 : 3} />
        </output>
        {tool}
      </div>
      {asked ? <p class="asked" role="alert">{asked}</p> : <Facts entry={entry} />}
      <Keys entry={entry} text={text} onText={change} undoes={undoes} onUndo={onUndo} />
      {asked ? (
        <BigButton tone="quiet" label={t("button.type_again")} onTap={() => change("")} />
      ) : value === null ? (
        instead
      ) : (
        <BigButton
          label={t("button.use", { value: typedUnit(entry) ? `${text} ${typedUnit(entry)}` : text })}
          detail={bandWords(value, entry)}
          armed={armed}
          onTap={use}
        />
      )}
    </section>
  );
}

function Facts({ entry }: { entry: Typing }) {
  const { name, last, likely_low, likely_high, band_low, band_high } = entry;
  const rows: [string, string][] = [];
  if (last !== null) rows.push([t("screen.last"), format(name, last)]);
  if (likely_low !== null && likely_high !== null) rows.push([t("screen.likely"), rangeOf(name, likely_low, likely_high)]);
  if (band_low !== null && band_high !== null) rows.push([t("screen.window"), formatRange(name, band_low, band_high)]);
  if (rows.length === 0) return null;
  return (
    <dl class="facts">
      {rows.map(([label, shown]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{shown}</dd>
        </div>
      ))}
    </dl>
  );
}

/** Pieces are whole. */
function rangeOf(name: string, low: number, high: number): string {
  return dimensionOf(name) === "" ? formatRange(name, Math.round(low), Math.round(high)) : formatRange(name, low, high);
}

type KeysProps = Pick<Props, "entry" | "text" | "onText" | "undoes" | "onUndo">;

function Keys({ entry, text, onText, undoes, onUndo }: KeysProps) {
  const beside = sideKey(entry);
  return (
    <div class="keys" role="group" aria-label={t("screen.keys")}>
      {["7", "8", "9", "4", "5", "6", "1", "2", "3"].map((key) => (
        <Key key={key} onTap={() => onText(pressed(text, key, entry))}>
          {key}
        </Key>
      ))}
      {beside ? (
        <Key onTap={() => onText(pressed(text, beside, entry))} label={t(beside === "-" ? "button.dash" : "button.decimal")}>
          {beside}
        </Key>
      ) : (
        <Key onTap={() => onText("")} label={t("button.clear")}>
          <small>{t("button.clear")}</small>
        </Key>
      )}
      <Key onTap={() => onText(pressed(text, "0", entry))}>0</Key>
      <LastKey text={text} onText={onText} undoes={undoes} onUndo={onUndo} />
    </div>
  );
}

const UNDO_ARMS_MS = 700;

/** Takes back the last digit; with none left it is undo, and arms only after a moment. */
function LastKey({ text, onText, undoes, onUndo }: Omit<KeysProps, "entry">) {
  const empty = text === "";
  const [armed, setArmed] = useState(empty);
  useEffect(() => {
    setArmed(false);
    if (!empty) return;
    const timer = setTimeout(() => setArmed(true), UNDO_ARMS_MS);
    return () => clearTimeout(timer);
  }, [empty]);
  if (!empty || undoes === null) {
    return (
      <Key onTap={() => onText(text.slice(0, -1))} label={t("button.delete_last")}>
        <ClearSign size={44} />
      </Key>
    );
  }
  return (
    <button type="button" class="key key-undo" aria-disabled={!armed} onClick={() => armed && onUndo()}>
      <BackSign size={26} />
      <small>
        {t("button.undo")} {undoes}
      </small>
    </button>
  );
}

function Key({ onTap, label, children }: { onTap: () => void; label?: string; children: ComponentChildren }) {
  return (
    <button type="button" class="key" aria-label={label} onClick={onTap}>
      {children}
    </button>
  );
}
