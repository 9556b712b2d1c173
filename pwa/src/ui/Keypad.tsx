import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";

import { dimensionOf, format, formatRange, t } from "../text";
import { BigButton } from "./BigButton";
import { Digits } from "./BigNumber";
import { ClearSign } from "./icons";
import { keysLie } from "./keyPlace";
import { bandWords, isWord, outOfRangeMessage, pressed, sideKey, typedUnit, typedValue, type Typing } from "./typing";
import { RedoButton, UndoButton, type UndoProps } from "./UndoButton";

interface Props {
  entry: Typing;
  text: string;
  onText: (text: string) => void;
  onUse: (value: number | string) => void;
  /** Stands where the digits will, while nothing is typed: never where a key lies. */
  undo: UndoProps;
  /** Shown where the button stands while nothing is typed. */
  instead: ComponentChildren;
  tool: ComponentChildren;
  armed: boolean;
}

/** Our own keypad: what was typed large, what is expected beside it, one tap to send it. */
export function Keypad({ entry, text, onText, onUse, undo, instead, tool, armed }: Props) {
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
        {text === "" && undo.undoes !== null && <UndoButton {...undo} />}
        {text === "" && undo.redoes !== null && <RedoButton {...undo} />}
        <output class={isWord(entry) ? "typed typed-word" : "typed"} aria-label={t("screen.typed")}>
          <Digits text={text || "–"} unit={typedUnit(entry)} most={isWord(entry) ? 7 : 3} />
        </output>
        {tool}
      </div>
      {asked ? <p class="asked" role="alert">{asked}</p> : <Facts entry={entry} />}
      <Keys entry={entry} text={text} onText={change} />
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

type KeysProps = Pick<Props, "entry" | "text" | "onText">;

function Keys(props: KeysProps) {
  const place = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (place.current) keysLie(place.current);
  });
  return (
    <div class="keys" role="group" aria-label={t("screen.keys")} ref={place}>
      {isWord(props.entry) ? <WordKeys {...props} /> : <NumberKeys {...props} />}
      <Key onTap={() => props.onText(props.text.slice(0, -1))} label={t("button.delete_last")}>
        <ClearSign size={44} />
      </Key>
    </div>
  );
}

const DIGITS = ["7", "8", "9", "4", "5", "6", "1", "2", "3"];

function NumberKeys({ entry, text, onText }: KeysProps) {
  const beside = sideKey(entry);
  return (
    <>
      {DIGITS.map((key) => (
        <Key key={key} onTap={() => onText(pressed(text, key, entry))}>
          {key}
        </Key>
      ))}
      {beside ? (
        <Key onTap={() => onText(pressed(text, beside, entry))} label={t("button.decimal")}>
          {beside}
        </Key>
      ) : (
        <Key onTap={() => onText("")} label={t("button.clear")}>
          <small>{t("button.clear")}</small>
        </Key>
      )}
      <Key onTap={() => onText(pressed(text, "0", entry))}>0</Key>
    </>
  );
}

/** Letters by three on keys as large as the digits': a glove hits one of them, then the letter. */
const LETTERS = ["ABC", "DEF", "GHI", "JKL", "MNO", "PQR", "STU", "VWX", "YZ-"];

function WordKeys({ entry, text, onText }: KeysProps) {
  const [page, setPage] = useState<"digits" | "letters" | string>("digits");
  const type = (key: string) => onText(pressed(text, key, entry));
  const three = LETTERS.find((one) => one === page);
  const choose = (letter: string) => (type(letter), setPage("letters"));
  const keys = three ? [...three] : page === "letters" ? LETTERS : DIGITS;
  const tap = three ? choose : page === "letters" ? setPage : type;
  return (
    <>
      {keys.map((key) => (
        <Key key={key} onTap={() => tap(key)} label={key === "-" ? t("button.dash") : key}>
          {key.length > 1 ? <span class="three">{key}</span> : key}
        </Key>
      ))}
      {/* The rows below stay where they are. */}
      {three && <div class="no-keys" />}
      <Key onTap={() => setPage(page === "digits" ? "letters" : "digits")} label={t(page === "digits" ? "button.letters" : "button.digits")}>
        <span class="three">{page === "digits" ? "ABC" : "123"}</span>
      </Key>
      <Key onTap={() => type("0")}>0</Key>
    </>
  );
}

function Key({ onTap, label, children }: { onTap: () => void; label?: string; children: ComponentChildren }) {
  return (
    <button type="button" class="key" aria-label={label} onClick={onTap}>
      {children}
    </button>
  );
}
