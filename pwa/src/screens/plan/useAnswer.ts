import { useEffect, useState } from "preact/hooks";

import type { ProblemDocument, Values } from "../../documents";
import type { SlabPlanRequest } from "../../engine/types";
import { EngineProblem, measured, type PlanParts, planSlab, type SlabAnswer } from "../../state";

const PAUSE_MS = 250;

export interface Answer {
  answer: SlabAnswer | null;
  problem: ProblemDocument | null;
  failed: boolean;
  /** A newer request is on its way. */
  busy: boolean;
}

const NOTHING: Answer = { answer: null, problem: null, failed: false, busy: false };

/** The plan for a request, recomputed a moment after the last change. `request` null: something typed cannot be read. */
export function useAnswer(request: Values | null, parts: PlanParts): Answer {
  const [state, setState] = useState<Answer>(NOTHING);
  const key = JSON.stringify([request, parts]);
  const known = measured.value;
  useEffect(() => {
    if (request === null) return setState({ ...NOTHING });
    setState((old) => ({ ...old, busy: true }));
    let current = true;
    const timer = setTimeout(() => {
      // An empty field is left out: the engine says that it is missing.
      planSlab(request as unknown as SlabPlanRequest, parts).then(
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

function refused(error: unknown): Answer {
  if (error instanceof EngineProblem) return { ...NOTHING, problem: error.problem };
  return { ...NOTHING, failed: true };
}
