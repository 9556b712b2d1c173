import { useEffect, useState } from "preact/hooks";

import { halfMade, keepHalfMade } from "../../state";

/** A plan's form that outlasts another screen, a reload and the way to the bowl and back. Only what differs from a fresh
 * form is kept, so that the rest follows the shop. `fresh` gives the form of what is chosen in a kept one; `anew`: a
 * form that leads here wants a fresh one. */
export function useKeptForm<F extends object>(kind: string, fresh: (chosen: Partial<F>) => F, anew: boolean): [F, (next: (old: F) => F) => void] {
  const [form, setForm] = useState<F>(() => {
    const kept = anew ? null : halfMade<Partial<F>>(kind);
    const begun = fresh(kept ?? {});
    return kept && chosenOf(kept) === chosenOf(begun) ? { ...begun, ...kept } : begun;
  });
  useEffect(() => keepHalfMade(kind, differences(form, fresh(form))), [form]);
  return [form, setForm];
}

function chosenOf(form: { product_id?: string }): string | undefined {
  return form.product_id;
}

function differences<F extends object>(form: F, fresh: F): Partial<F> | null {
  const same = (name: string) => JSON.stringify(form[name as keyof F]) === JSON.stringify(fresh[name as keyof F]);
  const changed = Object.fromEntries(Object.entries(form).filter(([name]) => !same(name)));
  const chosen = chosenOf(form) === undefined ? {} : { product_id: chosenOf(form) };
  return Object.keys(changed).length > 0 || chosenOf(form) !== undefined ? ({ ...chosen, ...changed } as Partial<F>) : null;
}
