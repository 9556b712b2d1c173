import type { Advice } from "../documents";
import { t } from "../text";

/** The prompt of a step, filled in with the number that goes with it. */
export function promptText({ say, number }: Advice): string {
  return t(say.code, number ? { [number.name]: number.value, ...say.values } : say.values);
}
