/** What one form of a plan hands to another, for its first drawing. */
export const planDraft: { product_id: string | null; bowl: { chocolate_id: string | null; kg: number } | null } = {
  product_id: null,
  bowl: null,
};
