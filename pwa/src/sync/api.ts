import type { BenchEvent, Batches, Contributions, Health, HealthForStrangers, Lesson, PairedPhone, PairingOffer, Phones, ProblemDetails, ProblemDocument, Pulled, Pushed, ServerRecord, Snapshot, TakenIn, Traced } from "../documents";
import { EngineProblem } from "../problems";

/** The server did not answer, or answered with something that is not ours. */
export class Unreachable extends Error {
  /** `told`: what a server says that cannot use its data: nothing is stored there, and this phone keeps all it has. */
  constructor(
    message: string,
    readonly told: string | null = null,
  ) {
    super(message);
  }
}

/** The server answered that it will not take this. */
export class Refusal extends Error {
  constructor(
    readonly status: number,
    readonly code: string,
  ) {
    super(`${status} ${code}`);
  }
}

/** What the server answers to a phone that is not paired, or not any more. */
export const NOT_PAIRED = 401;

/** The server as the phone sees it. Every call throws Unreachable or Refusal. */
export interface Api {
  health(): Promise<Health>;
  push(events: BenchEvent[]): Promise<Pushed>;
  /** Events after a position; `seen`: its mark. Throws a Refusal `other_log` when the log is no longer as it was there. */
  pull(after: number, seen: string | null): Promise<Pulled>;
  /** One page of what a phone starts from: after an event, of the log up to another. */
  snapshot(after: number, upto: number | null): Promise<Snapshot>;
  /** A page of batches, newest first, behind one of them. */
  batches(before: string | null): Promise<Batches>;
  batch(batchId: string): Promise<ServerRecord>;
  contributions(): Promise<Lesson[]>;
  /** What went into what, both ways from "<kind>/<id>". */
  trace(start: string): Promise<Traced>;
  /** A file of the server's, as text. */
  file(path: string): Promise<string>;
  /** The reply of a plan, by its place under /api/plans. */
  plan<T>(place: string, request: object, timeoutMs: number): Promise<T>;
}

/** Lists that go out and come in as files. */
export type ListPlace = "lots" | "orders" | "packs";

const APP = "amberbench";
const HEALTH_MS = 4_000;
const EXCHANGE_MS = 20_000;
/** 2 MB over a poor network. */
const PHOTO_MS = 90_000;

async function ask<T>(path: string, timeoutMs: number, body?: unknown): Promise<T> {
  const response = await answered(path, timeoutMs, body === undefined ? {} : posted(body));
  let document: unknown;
  try {
    document = await response.json();
  } catch {
    throw new Unreachable(`${path}: ${response.status}, not JSON`);
  }
  if (response.ok) return document as T;
  throw failure(response.status, document);
}

function posted(body: unknown): RequestInit {
  return { method: "POST", headers: { "content-type": "application/json" }, body: JSON.stringify(body) };
}

async function answered(path: string, timeoutMs: number, init: RequestInit): Promise<Response> {
  try {
    // What the server says is shown as it comes: in the language of the screens.
    const language = globalThis.document?.documentElement.lang;
    const headers = { ...(language && { "accept-language": language }), ...init.headers };
    return await fetch(path, { cache: "no-store", signal: AbortSignal.timeout(timeoutMs), ...init, headers });
  } catch (error) {
    throw new Unreachable(`${path}: ${String(error)}`);
  }
}

/** Server trouble and "later" are as good as no answer; the rest is the server's last word. */
function failure(status: number, document: unknown): Error {
  const details = document as Partial<ProblemDetails> | null;
  if (status >= 500 || status === 408 || status === 429) return new Unreachable(String(status), details?.reason ? (details.detail ?? null) : null);
  const problem = details?.errors?.[0];
  return problem?.code ? new ProblemRefusal(status, problem) : new Refusal(status, "refused");
}

class ProblemRefusal extends Refusal {
  constructor(
    status: number,
    readonly problem: ProblemDocument,
  ) {
    super(status, problem.code);
  }
}

/** The server over HTTP, same origin. */
export const httpApi: Api = {
  async health() {
    const health = await ask<Health | HealthForStrangers>("/api/health", HEALTH_MS);
    if ("paired" in health) throw new Refusal(NOT_PAIRED, "not_paired");
    // A captive portal or a wrong server answers too; ours says its name.
    if (health.app !== APP) throw new Unreachable("not this app's server");
    return health;
  },
  push: (events) => ask<Pushed>("/api/events", EXCHANGE_MS, { events }),
  pull: (after, seen) => ask<Pulled>(`/api/events?after=${after}&limit=500${seen ? `&seen=${seen}` : ""}`, EXCHANGE_MS),
  snapshot: (after, upto) => ask<Snapshot>(`/api/snapshot?after=${after}${upto === null ? "" : `&upto=${upto}`}`, EXCHANGE_MS),
  batches: (before) => ask<Batches>(`/api/batches${before === null ? "" : `?before=${encodeURIComponent(before)}`}`, EXCHANGE_MS),
  batch: (batchId) => ask<ServerRecord>(`/api/batches/${encodeURIComponent(batchId)}`, EXCHANGE_MS),
  contributions: async () => (await ask<Contributions>("/api/contributions", EXCHANGE_MS)).contributions,
  trace: (start) => ask<Traced>(`/api/trace?start=${encodeURIComponent(start)}`, EXCHANGE_MS),
  async file(path) {
    const response = await answered(path, EXCHANGE_MS, {});
    if (!response.ok) throw new Unreachable(`${path}: ${response.status}`);
    return response.text();
  },
  plan: <T>(place: string, request: object, timeoutMs: number) => withProblems(ask<T>(`/api/plans/${place}`, timeoutMs, request)),
};

/** The phones of the shop. Its calls throw EngineProblem where the server says what is wrong, else what every call throws. */
export const httpPhones = {
  pair: (code: string, device_id: string) => withProblems(ask<PairedPhone>("/api/pairings/use", EXCHANGE_MS, { code, device_id })),
  offer: (name: string, role: string) => withProblems(ask<PairingOffer>("/api/pairings", EXCHANGE_MS, { name, role })),
  phones: async () => (await ask<Phones>("/api/phones", EXCHANGE_MS)).phones,
  async revoke(phoneId: string) {
    const { ok, status } = await answered(`/api/phones/${phoneId}`, EXCHANGE_MS, { method: "DELETE" });
    if (!ok) throw failure(status, null);
  },
};

/** Takes a file of lots, orders or packs in, all of it or nothing. Throws as the phones' calls do. */
export const takeIn = (place: ListPlace, file: string) => withProblems(ask<TakenIn>(`/api/${place}`, PHOTO_MS, { file }));

async function withProblems<T>(answer: Promise<T>): Promise<T> {
  try {
    return await answer;
  } catch (error) {
    if (error instanceof ProblemRefusal) throw new EngineProblem(error.problem);
    throw error;
  }
}

/** The server's endpoints for pictures. Both throw Unreachable or Refusal. */
export interface PhotoApi {
  send(id: string, blob: Blob): Promise<void>;
  photo(id: string): Promise<Blob>;
}

export const httpPhotos: PhotoApi = {
  async send(id, blob) {
    const init = { method: "PUT", headers: { "content-type": "image/jpeg" }, body: blob };
    await pictureAnswer(id, init);
  },
  // What stands under an id never changes: the browser may keep it.
  photo: async (id) => (await pictureAnswer(id, { cache: "default" })).blob(),
};

async function pictureAnswer(id: string, init: RequestInit): Promise<Response> {
  const response = await answered(`/api/photos/${encodeURIComponent(id)}`, PHOTO_MS, init);
  if (!response.ok) throw failure(response.status, await response.json().catch(() => null));
  return response;
}
