/** Phone stores as older versions of the app left them. */
import { openDB } from "idb";

import { MIGRATIONS, type Schema } from "../storage/schema";
import old from "./oldStore.json";

/** Makes a store of an older version and fills it: rows by store; single values of `meta` by name. */
export async function olderStore(name: string, version: number, rows: Record<string, object[]>, meta: Record<string, unknown> = {}): Promise<void> {
  const db = await openDB<Schema>(name, version, {
    async upgrade(made, _old, _new, transaction) {
      for (const migrate of MIGRATIONS.slice(0, version)) await migrate(made, transaction);
    },
  });
  for (const [store, all] of Object.entries(rows)) for (const row of all) await db.put(store as "events", row as never);
  for (const [key, value] of Object.entries(meta)) await db.put("meta", value, key);
  db.close();
}

/** The phone in oldStore.json, written by an app of version 3: no streams, nothing set aside, two events unsent. */
export function oldPhone(name: string): Promise<void> {
  const { events, outbox, batches, meta } = old;
  return olderStore(name, 3, { events, outbox, batches }, meta);
}
