import type { Connection } from "./database";
import type { PhotoRow } from "./schema";

/** The pictures on this phone, and which of them still have to be sent. They are written with their events (`EventLog`). */
export class PhotoBox {
  constructor(private readonly connection: Connection) {}

  async get(id: string): Promise<Blob | undefined> {
    return (await this.connection.use((db) => db.get("photos", id)))?.blob;
  }

  unsentCount(): Promise<number> {
    return this.connection.use((db) => db.count("photo_outbox"));
  }

  /** The next one to send to a server of this version that is none of `tried`. */
  next(engineVersion: string, tried: ReadonlySet<string>): Promise<PhotoRow | undefined> {
    return this.connection.use(async (db) => {
      const transaction = db.transaction(["photos", "photo_outbox"]);
      const rows = await transaction.objectStore("photo_outbox").getAll();
      const row = rows.find(({ id, refused_by }) => refused_by !== engineVersion && !tried.has(id));
      return row && transaction.objectStore("photos").get(row.id);
    });
  }

  /** The server has it. */
  async sent(id: string): Promise<void> {
    await this.connection.use((db) => db.delete("photo_outbox", id));
  }

  /** A server of this version will not take it: it stays here. */
  async refused({ id, batch_id }: PhotoRow, engineVersion: string): Promise<void> {
    await this.connection.use((db) => db.put("photo_outbox", { id, batch_id, refused_by: engineVersion }));
  }
}
