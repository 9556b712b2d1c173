import type { Lot, Order, Pack, Summary } from "../../documents";

export interface Known {
  lots: Iterable<Lot>;
  packs: Iterable<Pack>;
  orders: Iterable<Order>;
  batches: Iterable<Summary>;
}

/** What is found by words or digits typed: "<kind>/<id>", boxes and lots in front, by codes, names, customers and days. */
export function seek(sought: string, known: Known, words: { lot: (lot: Lot) => string; pack: (pack: Pack) => string; order: (order: Order) => string; batch: (batch: Summary) => string }): string[] {
  const wanted = sought.toLocaleLowerCase().split(/\s+/).filter(Boolean);
  if (wanted.length === 0) return [];
  const told = [
    ...[...known.packs].map((one) => ({ node: `pack/${one.id}`, text: `${one.code} ${words.pack(one)} ${one.made_on ?? ""}` })),
    ...[...known.lots].map((one) => ({ node: `lot/${one.id}`, text: `${one.supplier_lot} ${one.supplier} ${words.lot(one)}` })),
    ...[...known.orders].map((one) => ({ node: `order/${one.id}`, text: `${one.customer} ${one.note} ${words.order(one)}` })),
    ...[...known.batches].map((one) => ({ node: `batch/${one.batch_id}`, text: `${one.name} ${one.label?.lot ?? ""} ${words.batch(one)}` })),
  ];
  return told.filter(({ text }) => wanted.every((word) => text.toLocaleLowerCase().includes(word))).map(({ node }) => node);
}

const COLUMN: Record<string, number> = { lot: 0, batch: 1, pack: 2, order: 3, customer: 3 };

/** The nodes of a trace in four columns: deliveries, batches, boxes, orders and customers. */
export function columnsOf(nodes: string[]): string[][] {
  const columns: string[][] = [[], [], [], []];
  for (const node of nodes) columns[COLUMN[node.split("/")[0] ?? ""] ?? 3]?.push(node);
  return columns;
}
