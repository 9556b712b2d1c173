import type { Connection } from "./database";
import { uuid7 } from "./uuid";

/** Single values by name. */
export class Meta {
  constructor(private readonly connection: Connection) {}

  async get<T>(name: string): Promise<T | undefined> {
    return (await this.connection.use((db) => db.get("meta", name))) as T | undefined;
  }

  async put(name: string, value: unknown): Promise<void> {
    await this.connection.use((db) => db.put("meta", value, name));
  }

  /** The name of this device in the log, made once; two tabs starting together agree on one. */
  deviceId(nowMs: number): Promise<string> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction("meta", "readwrite", { durability: "strict" });
      const had = (await transaction.store.get("device_id")) as string | undefined;
      const id = had ?? uuid7(nowMs);
      if (!had) await transaction.store.put(id, "device_id");
      await transaction.done;
      return id;
    });
  }
}
