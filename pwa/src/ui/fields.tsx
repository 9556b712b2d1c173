import type { ComponentChildren } from "preact";
import { useId, useLayoutEffect, useRef, useState } from "preact/hooks";

import type { ProblemDocument } from "../documents";
import { dimensionOf, editable, parse, problemText, reader, t, typedIn, unitsOf } from "../text";

interface FrameProps {
  label: string;
  id: string;
  problem: ProblemDocument | null;
  note?: ComponentChildren;
  children: ComponentChildren;
}

export function FieldFrame({ label, id, problem, note, children }: FrameProps) {
  return (
    <div class={problem ? "field field-wrong" : "field"}>
      <label for={id}>{label}</label>
      {children}
      {note && <p class="field-note">{note}</p>}
      {problem && (
        <p class="field-problem" id={`${id}-problem`} role="alert">
          {problemText(problem, label)}
        </p>
      )}
    </div>
  );
}

interface QuantityProps {
  label: string;
  /** Its suffix says what it measures. */
  name: string;
  /** SI, or null for nothing typed. */
  value: number | null;
  onValue: (value: number | null, problem: ProblemDocument | null) => void;
  problem: ProblemDocument | null;
  note?: ComponentChildren;
}

/** A number with its unit: any usual unit may be picked, or typed behind the number ("2.5 lb"). */
export function QuantityField({ label, name, value, onValue, problem, note }: QuantityProps) {
  const id = useId();
  const dimension = dimensionOf(name);
  const [unit, setUnit] = useState(() => typedIn(name, reader.value.units));
  const [text, setText] = useState(() => (value === null ? "" : editable(name, value, unit)));
  const [fault, setFault] = useState<ProblemDocument | null>(null);
  const sent = useRef(value);
  // With the drawing, not after it: an effect that runs later would meet the next key already typed and wipe it out.
  useLayoutEffect(() => {
    // A value from outside (another product) replaces the text; one's own typing does not come back changed.
    if (value === sent.current) return;
    sent.current = value;
    setFault(null);
    setText(value === null ? "" : editable(name, value, unit));
  }, [value]);
  const take = (words: string, own: string) => {
    const parsed = parse(name, words, own || undefined);
    sent.current = parsed.value;
    setText(words);
    setFault(parsed.problem);
    onValue(parsed.value, parsed.problem);
  };
  const wrong = fault ?? problem;
  const choices = unitsOf(dimension);
  return (
    <FieldFrame label={label} id={id} problem={wrong} note={note}>
      <span class="field-row">
        <input
          id={id}
          inputMode="decimal"
          autocomplete="off"
          value={text}
          aria-invalid={wrong !== null}
          aria-describedby={wrong ? `${id}-problem` : undefined}
          onInput={(event) => take(event.currentTarget.value, unit)}
        />
        {choices.length > 0 && (
          <select aria-label={t("desk.unit_of", { field: label })} value={unit} onChange={(event) => (setUnit(event.currentTarget.value), take(text, event.currentTarget.value))}>
            {choices.map((one) => (
              <option key={one} value={one}>
                {one}
              </option>
            ))}
          </select>
        )}
      </span>
    </FieldFrame>
  );
}

interface WordsProps {
  label: string;
  value: string;
  most: number;
  inputMode?: "numeric";
  onValue: (value: string) => void;
}

/** A few words: a lot, a name. */
export function WordsField({ label, value, most, inputMode, onValue }: WordsProps) {
  const id = useId();
  return (
    <FieldFrame label={label} id={id} problem={null}>
      <span class="field-row">
        <input
          id={id}
          maxLength={most}
          inputMode={inputMode}
          autocomplete="off"
          value={value}
          onInput={(event) => onValue(event.currentTarget.value)}
        />
      </span>
    </FieldFrame>
  );
}

interface TimeProps {
  label: string;
  /** As the browser's own field has it: "14:05", or a day "2026-03-04"; "" for nothing. */
  value: string;
  kind?: "time" | "date";
  problem: ProblemDocument | null;
  onValue: (value: string) => void;
}

/** A time of the kitchen's clock, or a day, by the phone's own picker. */
export function TimeField({ label, value, kind = "time", problem, onValue }: TimeProps) {
  const id = useId();
  return (
    <FieldFrame label={label} id={id} problem={problem}>
      <input
        id={id}
        class="field-time"
        type={kind}
        value={value}
        aria-invalid={problem !== null}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onInput={(event) => onValue(event.currentTarget.value)}
      />
    </FieldFrame>
  );
}

interface ChoiceProps {
  label: string;
  value: string;
  options: { value: string; label: string }[];
  onValue: (value: string) => void;
  problem?: ProblemDocument | null;
  note?: ComponentChildren;
}

export function ChoiceField({ label, value, options, onValue, problem = null, note }: ChoiceProps) {
  const id = useId();
  return (
    <FieldFrame label={label} id={id} problem={problem} note={note}>
      <select id={id} class="field-whole" value={value} onChange={(event) => onValue(event.currentTarget.value)}>
        {options.map((one) => (
          <option key={one.value} value={one.value}>
            {one.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}

interface SeveralProps {
  legend: string;
  values: string[];
  options: { value: string; label: string }[];
  note?: ComponentChildren;
  /** What a tap says that leaves the values as they are. */
  confirm?: string;
  onValues: (values: string[]) => void;
}

/** Any number of a few, all in view, in the order of the options. */
export function SeveralField({ legend, values, options, note, confirm, onValues }: SeveralProps) {
  const toggled = (value: string, on: boolean) =>
    onValues(options.map((one) => one.value).filter((one) => (one === value ? on : values.includes(one))));
  return (
    <fieldset class="several">
      <legend>{legend}</legend>
      {options.map((one) => (
        <label key={one.value}>
          <input
            type="checkbox"
            checked={values.includes(one.value)}
            onChange={(event) => toggled(one.value, event.currentTarget.checked)}
          />
          <span>{one.label}</span>
        </label>
      ))}
      {note && <p class="field-note">{note}</p>}
      {confirm && (
        <button type="button" onClick={() => onValues(values)}>
          {confirm}
        </button>
      )}
    </fieldset>
  );
}

interface SwitchProps {
  legend: string;
  value: string;
  options: { value: string; label: string }[];
  onValue: (value: string) => void;
}

/** One of a few, all in view. */
export function SwitchField({ legend, value, options, onValue }: SwitchProps) {
  const name = useId();
  return (
    <fieldset class="switch">
      <legend>{legend}</legend>
      {options.map((one) => (
        <label key={one.value}>
          <input type="radio" name={name} checked={one.value === value} onChange={() => onValue(one.value)} />
          <span>{one.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
