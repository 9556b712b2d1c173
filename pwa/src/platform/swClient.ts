/** How far the app shell is: stored on the phone, and whether a newer version waits. */
interface ShellListener {
  stored: () => void;
  waiting: () => void;
}

/** Tabs stay open for days: look for a new version so often (ms). */
const LOOK_MS = 3_600_000;

let registration: ServiceWorkerRegistration | null = null;
let asked = false;

/** Registers the service worker; does nothing where there is none (plain http away from localhost) or in development. */
export async function startShell(listener: ShellListener): Promise<void> {
  const { serviceWorker } = navigator as { serviceWorker?: ServiceWorkerContainer };
  if (!serviceWorker || import.meta.env.DEV) return;
  try {
    registration = await serviceWorker.register("/sw.js", { updateViaCache: "none" });
  } catch (error) {
    console.warn("no service worker:", error);
    return;
  }
  // A hidden tab of the old version would miss its files: it reloads too. One in front of a person is left alone.
  if (serviceWorker.controller)
    serviceWorker.addEventListener("controllerchange", () => {
      if (asked || document.visibilityState === "hidden") location.reload();
    });
  const found = registration;
  const look = () => report(found, listener);
  look();
  watch(found.installing, look);
  found.addEventListener("updatefound", () => watch(found.installing, look));
  setInterval(() => void found.update().catch(() => {}), LOOK_MS);
}

function watch(worker: ServiceWorker | null, look: () => void): void {
  worker?.addEventListener("statechange", look);
}

/** A worker is active only after it has stored every file. */
function report(found: ServiceWorkerRegistration, listener: ShellListener): void {
  if (found.active) listener.stored();
  if (found.waiting && found.active) listener.waiting();
}

/** Lets the waiting version take over and reloads the page into it; false when none waits. */
export function takeNewShell(): boolean {
  const waiting = registration?.waiting;
  if (!waiting) return false;
  asked = true;
  waiting.postMessage({ type: "skip-waiting" });
  return true;
}
