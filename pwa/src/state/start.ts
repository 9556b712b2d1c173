/** Starts everything, in the order in which a person needs it: what the phone knows, the engine, the server. */
import type { SoundName } from "../documents";
import { startEngine } from "../engine/client";
import { phoneNow } from "../platform/clock";
import { saveFile } from "../platform/files";
import { keepStorage } from "../platform/persistence";
import { testSound, unlockSoundOnTap } from "../platform/sound";
import { startShell, takeNewShell } from "../platform/swClient";
import { openStore } from "../storage";
import { isAtHand } from "./batchBook";
import { AppState } from "./app";
import type { Acknowledged } from "./runningClocks";
import { loadShop } from "./shop";
import { batches, deviceId, engine, engineVersion, shell, sound, storage, storageErrorState, updateWaiting } from "./signals";
import { sync } from "./syncing";
import { correctedNow, setOffset, startTicking } from "./time";

let current: AppState | null = null;
let resolveOpening: (appState: AppState) => void;
let rejectOpening: (why: unknown) => void;
const opening = new Promise<AppState>((done, failed) => {
  resolveOpening = done;
  rejectOpening = failed;
});
// Whoever awaits the state sees the failure; if nobody does, that is no error.
opening.catch(() => {});

/** Resolves once the store is open; rejects when this browser gives us none. */
export function appState(): Promise<AppState> {
  return opening;
}

/** Called once, by main. */
export async function start(): Promise<void> {
  unlockSoundOnTap((state) => void (sound.value = state));
  startTicking();
  startEngine({
    ready: (version) => {
      engine.value = "ready";
      engineVersion.value = version;
    },
    crashed: (why) => {
      engine.value = "failed";
      console.error("engine:", why);
    },
  });
  void startShell({ is: (state) => void (shell.value = state), waiting: () => void newVersion() });
  try {
    current = await openAppState();
    storage.value = "open";
    resolveOpening(current);
  } catch (error) {
    storage.value = storageErrorState(error);
    console.error("no storage:", error);
    rejectOpening(error);
  }
  const persistent = await keepStorage();
  sync.value = { ...sync.value, persistent };
}

async function openAppState(): Promise<AppState> {
  const store = await openStore(phoneNow());
  deviceId.value = store.deviceId;
  await loadShop(store);
  const offset = (await store.meta.get<number>("offset_ms")) ?? null;
  if (offset !== null) setOffset(offset);
  const app = new AppState(store, (await store.meta.get<Acknowledged[]>("acknowledged")) ?? [], offset);
  await app.open();
  return app;
}

/** How long after the start a waiting version may take over by itself: nobody has begun anything yet (ms). */
const FRESH_MS = 3_000;
const startedAt = phoneNow();

async function newVersion(): Promise<void> {
  updateWaiting.value = true;
  // Only then is it known whether a batch runs.
  await opening.catch(() => {});
  if (phoneNow() - startedAt < FRESH_MS) applyUpdate();
}

/** Takes the waiting version; false while a batch runs. */
export function applyUpdate(): boolean {
  return ![...batches.value.values()].some(isAtHand) && takeNewShell();
}

export function silenceNow(): void {
  current?.runningClocks.silence();
}

/** Plays one sound as a test; call it from a tap. */
export function playSound(name: SoundName): void {
  void testSound(name);
}

export async function exportFacts({ store }: AppState): Promise<number> {
  const events = await store.events.unsent();
  const document = { app: "amberbench", holds: "unsent_events", device_id: store.deviceId, events };
  const day = new Date(correctedNow()).toISOString().slice(0, 10);
  saveFile(`amberbench-${day}.json`, "application/json", JSON.stringify(document, null, 1));
  return events.length;
}
