import { useEffect, useState } from "preact/hooks";

import type { ProblemDocument } from "../../documents";
import { EngineProblem, measured } from "../../state";

const PAUSE_MS = 250;

export interface Answer<A> {
  answer: A | null;
  problem: ProblemDocument | null;
  failed: boolean;
  /** A newer request is on its way. */
  busy: boolean;
}

const NOTHING: Answer<never> = { answer: null, problem: null, failed: false, busy: false };

/** The plan for a request, recomputed a moment after the last change of it or of what else it rests on.
 * `request` null: something typed cannot be read. `ask` gives null when a later question has overtaken it. */
export function useAnswer<R, A>(request: R | null, ask: (request: R) => Promise<A | null>, also: unknown = null): Answer<A> {
  const [state, setState] = useState<Answer<A>>(NOTHING);
  const key = JSON.stringify([request, also]);
  const known = measured.value;
  useEffect(() => {
    if (request === null) return setState({ ...NOTHING });
    setState((old) => ({ ...old, busy: true }));
    let current = true;
    const timer = setTimeout(() => {
      ask(request).then(
        (answer) => current && answer && setState({ ...NOTHING, answer }),
        (error: unknown) => current && setState(refused(error)),
      );
    }, PAUSE_MS);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [key, known]);
  return state;
}

function refused(error: unknown): Answer<never> {
  if (error instanceof EngineProblem) return { ...NOTHING, problem: error.problem };
  return { ...NOTHING, failed: true };
}
