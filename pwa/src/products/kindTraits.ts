/** What a kind of batch says of itself without drawing anything: read by the state and by the screens. */
import type { PlanDocument, PlanTaken, ProductRow, Run } from "../documents";
import type { RowForm } from "./shared/rowFields";

export type Kind = PlanDocument["kind"];
export type PlanOf<K extends Kind> = Extract<PlanDocument, { kind: K }>;
export type RunOf<K extends Kind> = Extract<Run, { kind: K }>;

/** How many rows each table of a paper sheet has for a plan. */
export interface SheetRows {
  bursts: number;
  slab: number;
  fills: number;
  trays: number;
}

/** What a kind of batch has and can do. Every member is optional; a missing one means the kind does not have that feature. */
export interface Traits<K extends Kind> {
  /** The address of the form that plans it; missing: it is begun on another screen. */
  route?: string;
  /** The function that plans it, where that answers with the batches it takes. */
  plannedBy?: "slab.plan" | "cluster.plan";
  /** The key of its name among what can be made; missing: the shop's products of this kind are listed there by name. */
  word?: string;
  /** The form of a product of the shop that is made so; missing: none is. */
  rows?: RowForm;
  /** Whether a product made so takes chocolate. */
  coated?(product: ProductRow): boolean;
  /** A plan as run.replay takes it, without what only pictures and the desk read; missing: all but its request. */
  forWorker?(plan: PlanOf<K>): PlanTaken;
  /** What lies under the caramel, as the allergens of the day need it; null for a material that has no name. */
  under?(plan: PlanOf<K>): (string | null)[];
  /** What one finished piece is made of, chocolate and salt apart (kg); missing: no pieces are sold of it. */
  piece?(plan: PlanOf<K>): { caramel_kg: number; under: { material: string | null; kg: number }[] };
  /** Other batches dip into it. */
  lendsChocolate?: true;
  /** Nobody's hands are at work on it: it takes no turn at the bench and does not keep the screen awake. */
  standsAlone?: true;
  /** Its paper sheet. */
  sheet?: {
    fits(plan: PlanOf<K>): boolean;
    rows(plan: PlanOf<K>): SheetRows;
    /** What a fill of the funnel is, for the engine. */
    fill?(plan: PlanOf<K>): { fill_kg: number; low_c: number };
  };
}
