import { type IDBPDatabase, openDB } from "idb";

import { MIGRATIONS, type Schema } from "./schema";

export type Database = IDBPDatabase<Schema>;

const NAME = "amberbench";
const MOST_TRIES = 4;

/** Holds the one connection and opens it again when the browser has closed it under us (which iOS does). */
export class Connection {
  /** Called with a database that had to be made anew though there was one: the browser has thrown it away. */
  lost: ((db: Database) => Promise<void>) | null = null;
  private opening: Promise<Database> | null = null;
  private had = false;

  constructor(private readonly name = NAME) {}

  /** Runs one piece of work; runs it again on a fresh connection when the old one turned out to be dead. */
  async use<T>(work: (db: Database) => Promise<T>): Promise<T> {
    for (let tries = 1; ; tries++) {
      const db = await this.open();
      try {
        return await work(db);
      } catch (error) {
        if (tries >= MOST_TRIES || !isDeadConnection(error)) throw error;
        this.close();
      }
    }
  }

  private close(): void {
    void this.opening?.then((db) => db.close()).catch(() => {});
    this.opening = null;
  }

  private open(): Promise<Database> {
    this.opening ??= this.opened().catch((error: unknown) => {
      this.opening = null;
      throw error;
    });
    return this.opening;
  }

  private async opened(): Promise<Database> {
    let isNew = false;
    const db = await openDB<Schema>(this.name, MIGRATIONS.length, {
      async upgrade(db, oldVersion, _newVersion, transaction) {
        isNew = oldVersion === 0;
        for (const migrate of MIGRATIONS.slice(oldVersion)) await migrate(db, transaction);
      },
      // A newer version of the app in another tab wants to upgrade, and waits until every tab has let go.
      blocking: () => this.close(),
      terminated: () => {
        this.opening = null;
      },
    });
    if (isNew && this.had) await this.lost?.(db);
    this.had = true;
    return db;
  }
}

/** Whether a connection that was closed is the cause; running out of room or a broken constraint is not. */
function isDeadConnection(error: unknown): boolean {
  const name = error instanceof Error || error instanceof DOMException ? error.name : "";
  return name === "InvalidStateError" || name === "AbortError" || name === "UnknownError";
}
