import { useEffect, useState } from "preact/hooks";

import type { ProblemDocument, Shop, ShopList } from "../../documents";
import { checkRow, emptyRow, EngineProblem, languageOf, type ShopRow } from "../../state";
import { type Draft, valuesOf, NOTHING_CHANGED } from "../../products/shared/rowForms";

const PAUSE_MS = 250;

/** The row a form is about and what its values rest on; null while a new one is being fetched, or when there is none. */
export function useRow(list: ShopList | "shop", id: string, shop: Shop) {
  const [blank, setBlank] = useState<{ row: ShopRow; basis: Record<string, string> } | null>(null);
  const fresh = list !== "shop" && id === "new";
  useEffect(() => {
    let here = true;
    if (fresh) void emptyRow(list, shop.units).then((found) => here && setBlank(found));
    return () => void (here = false);
  }, [list, id]);
  if (fresh) return blank;
  if (list === "shop") return { row: { ...shop, language: languageOf(shop) } as ShopRow, basis: shop.basis };
  const rows: ShopRow[] = shop[list];
  const row = rows.find((one) => one.id === id);
  return row ? { row, basis: shop.basis } : null;
}

/** What is typed into a form, and the engine's objection to it. */
export function useDraft(list: ShopList | "shop", row: ShopRow | null) {
  const [draft, setDraft] = useState<Draft>(NOTHING_CHANGED);
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const values = row ? valuesOf(list, row, draft) : null;
  useEffect(() => {
    let here = true;
    const timer = setTimeout(() => void objection(list, values).then((found) => here && setProblem(found)), PAUSE_MS);
    return () => {
      here = false;
      clearTimeout(timer);
    };
  }, [JSON.stringify(values)]);
  return { draft, setDraft, problem, setProblem };
}

export async function objection(list: ShopList | "shop", values: Record<string, unknown> | null): Promise<ProblemDocument | null> {
  if (!values) return null;
  try {
    await checkRow(list === "shop" ? "shop" : `${list}/new`, values);
    return null;
  } catch (error) {
    if (error instanceof EngineProblem) return error.problem;
    throw error;
  }
}
