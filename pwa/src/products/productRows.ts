/** The form of a product of the shop, by the kind of batch it is made as; a kind without one makes none. */
import { rows as cluster } from "./cluster/rows";
import type { Kind } from "./kindTraits";
import type { RowForm } from "./shared/rowFields";
import { rows as slab } from "./slab/rows";

export const PRODUCT_ROWS: { [K in Kind]?: RowForm } = { slab, cluster };
