import type { ProblemDocument } from "./documents";

/** The engine (here or on the server) refused a request: show `problemText(problem)`. */
export class EngineProblem extends Error {
  constructor(readonly problem: ProblemDocument) {
    super(problem.message);
    this.name = "EngineProblem";
  }
}

/** The engine itself broke: not the person's fault. `message` is for the log; screens show text `desk.engine_failed`. */
export class EngineFailure extends Error {
  constructor(message: string) {
    super(message);
    this.name = "EngineFailure";
  }
}
