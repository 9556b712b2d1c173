/** The real server under Node, its database a file that can be lost, copied and put back. */
import { type ChildProcess, spawn } from "node:child_process";
import { copyFileSync, existsSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** SQLite keeps what is not yet in the file beside it. */
const PARTS = ["", "-wal", "-shm"];

export class RealServer {
  private process: ChildProcess | null = null;
  private url = "";
  private readonly folder = mkdtempSync(join(tmpdir(), "amberbench-"));

  constructor(private readonly python: string) {}

  /** Every request of the phones goes to the server that runs, wherever it listens. */
  isTheOnlyOne(): void {
    const reach = globalThis.fetch;
    globalThis.fetch = (path, init) => reach(this.url + String(path), init);
  }

  async starts(): Promise<void> {
    const database = `sqlite:///${this.file("shop")}`;
    const started = spawn(this.python, ["-m", "amberbench", "serve", "--port", "0", "--database", database], { env: { ...process.env, AMBERBENCH_SIGN_IN: "off" }, stdio: ["ignore", "pipe", "inherit"] });
    this.process = started;
    this.url = await new Promise<string>((found, failed) => {
      let said = "";
      started.stdout.on("data", (part: Buffer) => {
        said += part.toString();
        const address = /https?:\/\/[^\s]+?(?=\/?\s)/.exec(said);
        if (address) found(address[0]);
      });
      started.on("exit", () => failed(new Error(`the server ended: ${said}`)));
    });
  }

  async stops(): Promise<void> {
    const stopping = this.process;
    if (!stopping) return;
    this.process = null;
    await new Promise<void>((done) => {
      stopping.on("exit", () => done());
      stopping.kill();
    });
  }

  /** Loses its database while it is stopped, and what says that there was one: somebody begins anew. */
  loses(): void {
    for (const part of [...PARTS, ".begun"]) rmSync(this.file("shop") + part, { force: true });
  }

  /** Copies its database, or puts such a copy in its place, while it is stopped. */
  copies(from: string, to: string): void {
    for (const part of PARTS) {
      rmSync(this.file(to) + part, { force: true });
      if (existsSync(this.file(from) + part)) copyFileSync(this.file(from) + part, this.file(to) + part);
    }
  }

  removes(): void {
    rmSync(this.folder, { recursive: true, force: true });
  }

  private file(name: string): string {
    return join(this.folder, `${name}.sqlite`);
  }
}
