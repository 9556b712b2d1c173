// @vitest-environment node
import { afterEach, expect, test, vi } from "vitest";

import type { SlabPlanRequest } from "../documents";
import { EngineProblem } from "../problems";
import { httpApi, Refusal, Unreachable } from "./api";

afterEach(() => vi.unstubAllGlobals());

/** A network that gives one answer to everything. */
function network(status: number, body: string): { path: string; init: RequestInit }[] {
  const asked: { path: string; init: RequestInit }[] = [];
  vi.stubGlobal("fetch", (path: string, init: RequestInit) => {
    asked.push({ path, init });
    return Promise.resolve(new Response(body, { status }));
  });
  return asked;
}

const PROBLEM = { field: "slab_height_m", code: "too_low", given: 0, low: 0.002, high: 0.1, unit: "m", accepted: null, message: "" };
const REQUEST = {} as SlabPlanRequest;

test("being on line is an answer that says the app's name", async () => {
  network(200, JSON.stringify({ app: "amberbench", engine_version: "0.1.0", received_ms: 1, sent_ms: 2 }));
  expect((await httpApi.health()).engine_version).toBe("0.1.0");
});

test("a server that knows this phone no more refuses it: it answers, and is not silent", async () => {
  network(200, '{"paired": false}');
  const error: unknown = await httpApi.health().catch((one: unknown) => one);
  expect(error).toBeInstanceOf(Refusal);
  expect((error as Refusal).status).toBe(401);
});

test.each([
  ["a sign-in page of the network", 200, "<html>Welcome</html>"],
  ["another server", 200, '{"app": "other"}'],
  ["a server in trouble", 503, '{"status": 503}'],
  ["a server that asks for patience", 429, '{"status": 429}'],
])("%s is not being on line", async (_name, status, body) => {
  network(status, body);
  await expect(httpApi.health()).rejects.toThrow(Unreachable);
});

test("no network at all is not being on line", async () => {
  vi.stubGlobal("fetch", () => Promise.reject(new TypeError("failed")));
  await expect(httpApi.health()).rejects.toThrow(Unreachable);
});

test("a plan refused by the server is the same problem the engine would name", async () => {
  network(422, JSON.stringify({ type: "about:blank", title: "", status: 422, errors: [PROBLEM] }));
  const failed = httpApi.plan("slab", REQUEST, 1500);
  await expect(failed).rejects.toThrow(EngineProblem);
  await expect(failed).rejects.toMatchObject({ problem: { field: "slab_height_m", code: "too_low", low: 0.002 } });
});

test("events refused as a whole are told from a server that is away", async () => {
  network(413, '{"status": 413}');
  await expect(httpApi.push([])).rejects.toThrow(Refusal);
  network(500, '{"status": 500}');
  await expect(httpApi.push([])).rejects.toThrow(Unreachable);
});

test("a server that cannot use its data says why, and is as good as away", async () => {
  network(503, '{"status": 503, "detail": "The disk is full.", "reason": "full", "errors": []}');
  await expect(httpApi.push([])).rejects.toMatchObject({ told: "The disk is full." });
  await expect(httpApi.push([])).rejects.toThrow(Unreachable);
  network(503, '{"status": 503, "detail": "The server is busy.", "errors": []}');
  await expect(httpApi.push([])).rejects.toMatchObject({ told: null });
});

test("nothing the server says is taken from a cache", async () => {
  const asked = network(200, '{"events": [], "cursor": 7, "more": false}');
  await httpApi.pull(7, null);
  expect(asked[0]?.path).toBe("/api/events?after=7&limit=500");
  expect(asked[0]?.init.cache).toBe("no-store");
});
