import { afterEach, beforeEach, expect, test, vi } from "vitest";

import type { ShellState } from "./swClient";

let states: ShellState[];
const listener = { is: (state: ShellState) => void states.push(state), waiting: () => {} };

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubEnv("DEV", false);
  vi.resetModules();
  vi.spyOn(console, "warn").mockImplementation(() => {});
  states = [];
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.unstubAllEnvs();
  vi.restoreAllMocks();
  vi.useRealTimers();
});

/** The page's side of its worker. */
let worker: EventTarget;
const tells = (type: string) => worker.dispatchEvent(new MessageEvent("message", { data: { type } }));

/** A browser that trusts the page or not, and answers a request to keep the app. */
async function opens(secure: boolean, register?: () => Promise<unknown>): Promise<void> {
  worker = Object.assign(new EventTarget(), { register, controller: null });
  vi.stubGlobal("isSecureContext", secure);
  vi.stubGlobal("navigator", register ? { serviceWorker: worker } : {});
  await (await import("./swClient")).startShell(listener);
}

const kept = { active: { postMessage: () => tells("stored") }, waiting: null, installing: null, addEventListener: () => {} };

test("an app that is kept says so", async () => {
  await opens(true, () => Promise.resolve(kept));
  expect(states).toEqual(["stored"]);
});

test("an app that has the bench alone is not ready, and is asked for the rest until it has every screen", async () => {
  let asked = 0;
  await opens(true, () => Promise.resolve({ ...kept, active: { postMessage: () => (asked += 1) } }));
  await vi.advanceTimersByTimeAsync(60_000);
  expect([states, asked]).toEqual([[], 2]);
  tells("stored");
  await vi.advanceTimersByTimeAsync(600_000);
  expect([states, asked]).toEqual([["stored"], 2]);
});

test("what a first visit did not wait for is asked for then, and again when the network is back", async () => {
  const asked: unknown[] = [];
  await opens(true, () => Promise.resolve({ ...kept, active: { postMessage: (message: unknown) => asked.push(message) } }));
  expect(asked).toEqual([{ type: "store-the-rest" }]);
  window.dispatchEvent(new Event("online"));
  expect(asked).toHaveLength(2);
});

test("a page over plain http needs HTTPS", async () => {
  await opens(false);
  expect(states).toEqual(["insecure"]);
});

test("a browser that keeps no apps says so", async () => {
  await opens(true);
  expect(states).toEqual(["missing"]);
});

test("a certificate that was clicked through is not trusted", async () => {
  await opens(true, () => Promise.reject(new DOMException("An SSL certificate error occurred", "SecurityError")));
  expect(states).toEqual(["untrusted"]);
});

test("a server that did not answer is asked again", async () => {
  let answers = false;
  await opens(true, () => (answers ? Promise.resolve(kept) : Promise.reject(new TypeError("failed to fetch"))));
  expect(states).toEqual([]);
  answers = true;
  await vi.advanceTimersByTimeAsync(60_000);
  expect(states).toEqual(["stored"]);
});
