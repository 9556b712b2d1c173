import { useEffect, useState } from "preact/hooks";

/** What the next form of a plan is filled in with when it opens: set by the form that leads to it, and cleared once taken. */
export const formPrefill: { product_id: string | null; pieces: number | null; bowl: { chocolate_id: string | null; kg: number } | null } = {
  product_id: null,
  pieces: null,
  bowl: null,
};

/** Whether the form that led here chose the product; from now on nobody has. */
export function usePrefilled(): boolean {
  const [asked] = useState(formPrefill.product_id !== null);
  useEffect(() => void (formPrefill.product_id = null), []);
  return asked;
}

/** Takes in how many good pieces the form that led here asked for, once. */
export function usePrefilledPieces(take: (pieces: number) => void): void {
  useEffect(() => {
    if (formPrefill.pieces !== null) take(formPrefill.pieces);
    formPrefill.pieces = null;
  }, []);
}
