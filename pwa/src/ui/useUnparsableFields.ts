import { useState } from "preact/hooks";

/** The names of the fields whose text cannot be parsed, and the function that sets the state of one. */
export function useUnparsableFields(): [string[], (name: string, fault: boolean) => void] {
  const [unparsable, setUnparsable] = useState<string[]>([]);
  return [unparsable, (name, fault) => setUnparsable((old) => (fault ? [...new Set([...old, name])] : old.filter((one) => one !== name)))];
}
