import type { ProblemDocument } from "./documents";
import type { Fault } from "./engine/fault";

/** The engine (here or on the server) refused a request: show `problemText(problem)`. */
export class EngineProblem extends Error {
  constructor(readonly problem: ProblemDocument) {
    super(problem.message);
    this.name = "EngineProblem";
  }
}

/** The problem where it is one of these fields; else null. */
export function problemAt(problem: ProblemDocument | null, ...fields: string[]): ProblemDocument | null {
  return problem && fields.includes(problem.field) ? problem : null;
}

/** The engine itself broke: not the person's fault. `message` is for the log; screens show text `desk.engine_failed`.
 * fault: the exception inside it; null: it stopped as a whole. */
export class EngineFailure extends Error {
  constructor(message: string, readonly fault: Fault | null = null) {
    super(message);
    this.name = "EngineFailure";
  }
}
