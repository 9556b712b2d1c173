import { useId } from "preact/hooks";

import { t } from "../text";

interface Props {
  label: string;
  value: number;
  least: number;
  most: number;
  /** What one often wants: a tap each. */
  usual?: number[];
  onValue: (value: number) => void;
}

/** A whole number: typed, or one less and one more by large buttons. */
export function CountField({ label, value, least, most, usual = [], onValue }: Props) {
  const id = useId();
  const held = (next: number) => onValue(Math.min(most, Math.max(least, Math.round(next) || 0)));
  return (
    <div class="count-field">
      <label for={id}>{label}</label>
      <span class="count-row">
        <button type="button" aria-label={t("button.one_less", { label })} disabled={value <= least} onClick={() => held(value - 1)}>
          −
        </button>
        <input id={id} inputMode="numeric" autocomplete="off" value={value} onFocus={(event) => event.currentTarget.select()} onInput={(event) => held(Number(event.currentTarget.value.replace(/\D/g, "")))} />
        <button type="button" aria-label={t("button.one_more", { label })} disabled={value >= most} onClick={() => held(value + 1)}>
          +
        </button>
      </span>
      {usual.length > 0 && (
        <span class="chips">
          {usual.map((one) => (
            <button type="button" class="chip" key={one} aria-pressed={one === value} onClick={() => held(one)}>
              {one}
            </button>
          ))}
        </span>
      )}
    </div>
  );
}
