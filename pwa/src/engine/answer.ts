import type { ProblemDocument } from "../documents";
import { EngineFailure, EngineProblem } from "../problems";
import type { FunctionName, Replies } from "./types";

/** The reply in the engine's answer. Throws EngineProblem for `{"problem": …}`, EngineFailure for no JSON. */
export function unwrapped<N extends FunctionName>(name: N, text: string): Replies[N] {
  const answer = parsed(name, text);
  if (answer.problem) throw new EngineProblem(answer.problem);
  return answer.reply as Replies[N];
}

function parsed(name: string, text: string): { reply?: unknown; problem?: ProblemDocument } {
  try {
    return JSON.parse(text) as { reply?: unknown; problem?: ProblemDocument };
  } catch {
    // A bare `nan` or `inf` in the text.
    throw new EngineFailure(`${name}: the answer holds a number that is not finite`);
  }
}
