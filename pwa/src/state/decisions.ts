/** What the engine decides when a fact is told stands in its event, so that no later engine decides it again. */
import type { Run, Values } from "../documents";
import type { Compute } from "./types";

interface Fact {
  kind: string;
  /** Corrected time (ms). */
  at_ms: number;
  body: Values;
}

/** The fact comes first: an engine that is busy or down for so long is not waited for, and the fold decides (ms). */
const WAITS_MS = 500;

/** The bodies of facts that follow each other in a batch, with what was decided. Never rejects.
 * run: the batch before them; null: it is not known, and nothing is decided. */
export async function decidedBodies(compute: Compute, run: Promise<Run | null>, facts: Fact[]): Promise<Values[]> {
  const plain = facts.map((fact) => fact.body);
  let timer: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<Values[]>((done) => {
    timer = setTimeout(done, WAITS_MS, plain);
  });
  try {
    return await Promise.race([asked(compute, run, facts), late]);
  } catch (error) {
    console.error("nothing decided:", error);
    return plain;
  } finally {
    clearTimeout(timer);
  }
}

async function asked(compute: Compute, known: Promise<Run | null>, facts: Fact[]): Promise<Values[]> {
  const run = await known;
  if (!run) return facts.map((fact) => fact.body);
  const { decided } = await compute("run.decide", { run, facts });
  return facts.map(({ body }, index) => (decided[index] ? { ...body, decided: decided[index] } : body));
}
