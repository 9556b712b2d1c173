import { useEffect, useId, useState } from "preact/hooks";

import type { ProblemDocument } from "../documents";
import { moneyTyped, parseMoney, t } from "../text";
import { FieldFrame } from "./fields";

interface Props {
  label: string;
  /** ISO 4217; "" where the shop has none yet. */
  currency: string;
  /** In the smallest coin; null: nothing typed. */
  minor: number | null;
  problem: ProblemDocument | null;
  note?: string | undefined;
  onMinor: (minor: number | null, problem: ProblemDocument | null) => void;
}

/** Money as it is written in its currency, kept in the smallest coin. */
export function MoneyField({ label, currency, minor, problem, note, onMinor }: Props) {
  const id = useId();
  const [text, setText] = useState(() => moneyTyped(minor, currency));
  const [fault, setFault] = useState<ProblemDocument | null>(null);
  useEffect(() => {
    // Set by something else than typing.
    if (parseMoney("price_minor", text, currency).value !== minor) setText(moneyTyped(minor, currency));
  }, [minor]);
  const take = (words: string) => {
    const parsed = parseMoney("price_minor", words, currency);
    setText(words);
    setFault(parsed.problem);
    onMinor(parsed.value, parsed.problem);
  };
  const wrong = fault ?? problem;
  return (
    <FieldFrame label={label} id={id} problem={wrong} note={note}>
      <span class="field-row">
        <input id={id} inputMode="decimal" autocomplete="off" value={text} aria-invalid={wrong !== null} onInput={(event) => take(event.currentTarget.value)} />
        <span class="field-unit">{currency || t("shop.no_currency")}</span>
      </span>
    </FieldFrame>
  );
}
