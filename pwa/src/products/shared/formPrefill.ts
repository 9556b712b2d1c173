import { useEffect, useState } from "preact/hooks";

/** What the next form of a plan is filled in with when it opens: set by the form that leads to it, and cleared once taken. */
export const formPrefill: { product_id: string | null; bowl: { chocolate_id: string | null; kg: number } | null } = {
  product_id: null,
  bowl: null,
};

/** Whether the form that led here chose the product; from now on nobody has. */
export function usePrefilled(): boolean {
  const [asked] = useState(formPrefill.product_id !== null);
  useEffect(() => void (formPrefill.product_id = null), []);
  return asked;
}
