import type { Fault } from "./fault";

/** What crosses to and from the engine's worker: strings only, for numbers would be cut to 32 bits on the way. */
export interface Call {
  id: number;
  name: string;
  text: string;
}

/** `text` is `{"reply": …}` or `{"problem": …}`; a fault says that the engine itself broke. */
export type Answer = { id: number; text: string } | { id: number; fault: Fault } | { ready: string } | { unready: string };
