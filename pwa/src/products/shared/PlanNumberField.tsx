import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";

import type { ProblemDocument } from "../../documents";
import { QuantityField } from "../../ui/fields";

interface Props {
  label: string;
  name: string;
  /** Its key among the unparsable fields of the form; missing: its name. Needed where a name stands in the form more than once. */
  place?: string;
  value: number | null;
  problem: ProblemDocument | null;
  note?: ComponentChildren;
  onParseState: (place: string, fault: boolean) => void;
  onValue: (value: number | null) => void;
}

/** A number field of a plan's form. It tells the form whether what is typed can be parsed. */
export function PlanNumberField({ place, onParseState, onValue, ...field }: Props) {
  const { name, value } = field;
  const here = place ?? name;
  // A value that is there can be read, wherever it came from; a field that goes takes its fault along.
  useEffect(() => void (value !== null && onParseState(here, false)), [value]);
  useEffect(() => () => onParseState(here, false), [here]);
  return <QuantityField key={here} {...field} onValue={(next, fault) => (onParseState(here, fault !== null), onValue(next))} />;
}
