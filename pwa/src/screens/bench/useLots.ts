import { useEffect, useRef, useState } from "preact/hooks";

import type { Advice, LotLeft, Values } from "../../documents";
import type { Typing } from "../../ui/typing";
import type { BenchProps } from "./benchProps";

interface Loaded {
  module: typeof import("../places/lots");
  left: LotLeft[];
}

/** The fact of a step that may be told with lots: what is typed there, or the start of dipping, at which salt stands ready. */
function takingOf({ action, entry }: Advice): Pick<Typing, "kind" | "body"> | null {
  return action ? (action.kind === "dipping_started" ? action : null) : entry;
}

/** The lots of a batch's step, once they are here: fetched after the bench, so that it waits for nothing. A step that began
 * without them stays as it is. */
export function useLots(props: BenchProps) {
  const { batchId, plan, run, advice } = props;
  const [loaded, setLoaded] = useState<Loaded | null>(null);
  const [taken, setTaken] = useState<LotLeft[] | null>(null);
  const entry = takingOf(advice);
  const at = `${advice.step} ${entry?.kind} ${JSON.stringify(entry?.body)}`;
  const step = useRef<{ at: string; offered: LotLeft[] }>({ at: "", offered: [] });
  useEffect(() => setTaken(null), [at]);
  useEffect(() => {
    void import("../places/lots")
      .then(async (module) => setLoaded({ module, left: await module.lotsLeft() }))
      .catch((error: unknown) => console.warn("no lots:", error));
  }, [batchId]);
  if (step.current.at !== at) step.current = { at, offered: loaded && entry ? loaded.module.lotsFor(loaded.left, plan, run, entry) : [] };
  const { offered } = step.current;
  const rest = loaded && advice.action?.kind === "closed" ? loaded.module.restOf(batchId, plan, run) : null;
  return {
    /** Asks for lots; null: this step has none to choose from, or they are chosen. */
    Page: taken === null && offered.length > 0 ? (loaded?.module.LotsPage ?? null) : null,
    offered,
    /** Takes lots; what is to be written at once where nothing is left to type. */
    take: (chosen: LotLeft[]): { kind: string; body: Values } | null => {
      setTaken(chosen);
      if (!loaded || !entry || entry.kind !== "under_lot_named" || chosen.length === 0) return null;
      return { kind: entry.kind, body: loaded.module.withLots(entry.kind, entry.body, run, chosen, (material) => loaded.module.plannedOf(plan, entry, material)) };
    },
    /** A body with the lots that were chosen for it. */
    withTaken: (kind: string, body: Values): Values => {
      if (!loaded || !taken?.length || kind !== entry?.kind || body.lots) return body;
      return loaded.module.withLots(kind, body, run, taken, (material) => loaded.module.plannedOf(plan, entry, material));
    },
    rest: rest && loaded ? { amount: rest.amount as number, keep: () => loaded.module.keepRest(rest) } : null,
  };
}
