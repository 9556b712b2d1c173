/** A mistake of ours inside the engine: the exception's type, and its trace for the log. */
export interface Fault {
  type: string;
  trace: string;
}

/** What the engine threw, as what crosses from the worker: an exception of Python carries its type and its trace. */
export function faultOf(error: unknown): Fault {
  if (!(error instanceof Error)) return { type: "", trace: String(error) };
  const { type } = error as { type?: unknown };
  return { type: typeof type === "string" ? type : error.name, trace: error.message };
}
