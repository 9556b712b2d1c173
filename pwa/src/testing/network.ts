import type { Chance } from "./chance";

/** What becomes of a request on its way. */
export type NetworkOutcome = "fine" | "never sent" | "answer lost" | "sent twice";

/** The way to a real server, with every fault a network has. The server's clock is told to run with the story's. */
export class Network {
  /** While set, chance decides what becomes of each request. */
  trouble = true;
  /** Requests so far, by what became of them. */
  readonly outcomes: Record<NetworkOutcome, number> = { fine: 0, "never sent": 0, "answer lost": 0, "sent twice": 0 };
  /** Called while a request is on its way: people do not wait for it. */
  meanwhile: () => Promise<void> = () => Promise.resolve();
  nowMs = 0;

  constructor(
    private readonly server: string,
    private readonly chance: Chance,
  ) {}

  /** From now on every request takes this way. */
  isTheOnlyOne(): void {
    globalThis.fetch = (path, init) => this.carry(String(path), init ?? {});
  }

  private async carry(path: string, init: RequestInit): Promise<Response> {
    const outcome = this.trouble ? this.drawOutcome() : "fine";
    this.outcomes[outcome] += 1;
    this.letTimePass();
    if (outcome === "never sent") throw new TypeError("no network");
    if (outcome === "sent twice") await fetchFrom(this.server + path, init);
    const response = await fetchFrom(this.server + path, init);
    const body = await response.text();
    await this.meanwhile();
    this.letTimePass();
    if (outcome === "answer lost") throw new TypeError("the network went away");
    return new Response(path === "/api/health" ? this.withOurClock(body) : body, { status: response.status });
  }

  private drawOutcome(): NetworkOutcome {
    return this.chance.happens(0.7) ? "fine" : this.chance.oneOf<NetworkOutcome>(["never sent", "answer lost", "sent twice"]);
  }

  /** Up to a second on the way. */
  private letTimePass(): void {
    this.nowMs += Math.floor(this.chance.between(1, 1000));
  }

  private withOurClock(body: string): string {
    return JSON.stringify({ ...JSON.parse(body), received_ms: this.nowMs, sent_ms: this.nowMs });
  }
}

const fetchFrom = globalThis.fetch;
