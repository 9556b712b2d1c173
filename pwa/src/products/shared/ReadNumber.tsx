import type { ComponentChildren } from "preact";
import { useEffect } from "preact/hooks";

import type { ProblemDocument } from "../../documents";
import { QuantityField } from "../../ui/fields";

interface Props {
  label: string;
  name: string;
  /** What it is called among the fields that cannot be read; its name, where that stands once in a form. */
  place?: string;
  value: number | null;
  problem: ProblemDocument | null;
  note?: ComponentChildren;
  onRead: (place: string, fault: boolean) => void;
  onValue: (value: number | null) => void;
}

/** A number of a plan's form, which tells whether it can be read. */
export function ReadNumber({ place, onRead, onValue, ...field }: Props) {
  const { name, value } = field;
  const here = place ?? name;
  // A value that is there can be read, wherever it came from; a field that goes takes its fault along.
  useEffect(() => void (value !== null && onRead(here, false)), [value]);
  useEffect(() => () => onRead(here, false), [here]);
  return <QuantityField key={here} {...field} onValue={(next, fault) => (onRead(here, fault !== null), onValue(next))} />;
}
