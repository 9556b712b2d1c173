/** The invented shop: as edits to begin with, and told from what somebody has made their own. */
import type { BenchEvent, ShopEdit } from "../documents";
import { inOrder, isOfKind, takenBack } from "../order";
import type { Store } from "../storage";
import { parseStreamId, streamOf } from "../streams";
import type { StreamBook } from "./streamBook";
import { orders, stockUses } from "./trade";
import { inLanguage, reader } from "../text";

/** A field of the invented shop: its value, words in other languages by their names. */
interface SeedField {
  value: unknown;
  basis?: string;
  [language: string]: unknown;
}

/** The device that writes what a shop begins with (services/shop.py). */
const SEED = "seed";

async function seedDocs(): Promise<Record<string, Record<string, SeedField>>> {
  return ((await import("../../../seed_data/demo_shop.json")).default as { docs: Record<string, Record<string, SeedField>> }).docs;
}

/** The invented shop as edits, in the reader's language; rows that were taken away come back. */
export async function demoEdits(): Promise<ShopEdit[]> {
  return Object.entries(await seedDocs()).flatMap(([doc, rows]) => {
    const facts = Object.entries(rows).map(([field, row]) => edit(doc, field, inLanguage(row, reader.value.language) ?? row.value, row.basis));
    return doc === "shop" ? facts : [...facts, edit(doc, "removed", false)];
  });
}

/** The rows in which only invented values stand, as "<list>/<id>", and "shop/name" for an invented name of the shop.
 * `events`: those of the shop, in the order of the log. */
export async function inventedDocs(events: BenchEvent[]): Promise<Set<string>> {
  const seeds = await seedDocs();
  // By row and field, whether what stands there is invented: the last event counts.
  const standing = new Map<string, Map<string, boolean>>();
  for (const { device_id, body: said } of events.filter(isOfKind("shop_set"))) {
    // That a row was taken away or put back says nothing of whose it is.
    if (said.field === "removed") continue;
    const row = standing.get(said.doc) ?? new Map<string, boolean>();
    standing.set(said.doc, row.set(said.field, device_id === SEED || isOf(seeds[said.doc]?.[said.field], said)));
  }
  const shopName = standing.get("shop")?.get("name");
  standing.delete("shop");
  const invented = [...standing].filter(([, row]) => [...row.values()].every(Boolean)).map(([doc]) => doc);
  return new Set(shopName ? [...invented, "shop/name"] : invented);
}

/** The edits that bring back what went when the invented shop was taken away last; none where it is here, or never was.
 * `events`: those of the shop, in the order of the log. */
export function editsBack(events: BenchEvent[]): ShopEdit[] {
  const facts = events.filter(isOfKind("shop_set"));
  const last = facts.filter(({ body: { doc, field } }) => doc === "shop" && field === "invented").at(-1);
  if (last?.body.value !== false) return [];
  // All of one change was written in one moment.
  const { at_ms, device_id } = last;
  const gone = facts.filter((one) => one.at_ms === at_ms && one.device_id === device_id);
  return gone.flatMap(({ body: { doc, field } }) => {
    if (field === "removed") return [edit(doc, "removed", false, "typed")];
    const before = facts.filter((one) => one.at_ms < at_ms && one.body.doc === doc && one.body.field === field).at(-1);
    return before ? [edit(doc, field, before.body.value, before.body.basis)] : [];
  });
}

/** Which facts of invented lots, orders and boxes are to be taken back, or to count again, as the invented shop goes or comes
 * back. What somebody told something of, or took something of, stays. `events`: all of these streams; `used`: ids of
 * lots and boxes that went somewhere. */
export function inventedTrade(events: BenchEvent[], used: ReadonlySet<string>, isThere: boolean): BenchEvent[] {
  const back = takenBack([...events].sort(inOrder));
  const isTold = ({ device_id, kind }: BenchEvent) => device_id !== SEED && kind !== "undone" && kind !== "redone";
  const own = new Set(events.filter(isTold).map(streamOf));
  const invented = events.filter((event) => event.device_id === SEED && back.has(event.id) === isThere);
  return invented.filter((event) => !own.has(streamOf(event)) && !used.has(parseStreamId(streamOf(event)).id));
}

type Kind = "lot" | "order" | "pack";
type Book = Pick<StreamBook<unknown>, "load" | "write">;

/** Takes the invented trade back, or tells it again. */
export async function followInvented(store: Store, books: Record<Kind, Book>, isThere: boolean): Promise<void> {
  const kinds = Object.keys(books) as Kind[];
  await Promise.all(kinds.map((kind) => books[kind].load()));
  const handed = [...orders.value.values()].flatMap((one) => one.handed.flatMap(({ pack_id }) => pack_id ?? []));
  const used = new Set([...stockUses.value.flatMap(({ lot_id, batch_id }) => (batch_id === null ? [] : [lot_id])), ...handed]);
  const events = (await Promise.all(kinds.map((kind) => store.events.eventsOfStreams(kind)))).flat();
  for (const event of inventedTrade(events, used, isThere)) {
    const { kind, id } = parseStreamId(streamOf(event));
    await books[kind as Kind].write(id, [{ kind: isThere ? "redone" : "undone", body: { event_id: event.id } }]);
  }
}

/** Whether an edit says what the invented shop says, in any language. */
function isOf(seed: SeedField | undefined, { value, basis }: ShopEdit): boolean {
  if (!seed || basis !== (seed.basis ?? "assumed")) return false;
  const { unit: _unit, basis: _basis, source: _source, ...values } = seed;
  return Object.values(values).some((one) => JSON.stringify(one) === JSON.stringify(value));
}

function edit(doc: string, field: string, value: unknown, basis = "assumed"): ShopEdit {
  return { doc, field, value, basis: basis as ShopEdit["basis"] };
}
