/** How far the app itself is kept here: not yet; it is; never over plain http; not with a certificate the phone does not
 * trust; not in this browser (a private window, say). */
export type ShellState = "storing" | "stored" | "insecure" | "untrusted" | "missing";

/** Hears how far it is, and when a newer version waits. */
interface ShellListener {
  is: (state: ShellState) => void;
  waiting: () => void;
}

/** Tabs stay open for days: look for a new version so often (ms). */
const LOOK_MS = 3_600_000;

let registration: ServiceWorkerRegistration | null = null;
let asked = false;
let stored = false;
let asking: ReturnType<typeof setTimeout> | undefined;

/** A server that did not answer for the service worker is asked again so much later (ms). */
const AGAIN_MS = 60_000;

/** Registers the service worker and says where it cannot; does nothing in development. */
export async function startShell(listener: ShellListener): Promise<void> {
  if (import.meta.env.DEV) return;
  const { serviceWorker } = navigator as { serviceWorker?: ServiceWorkerContainer };
  if (!window.isSecureContext) return listener.is("insecure");
  if (!serviceWorker) return listener.is("missing");
  try {
    registration = await serviceWorker.register("/sw.js", { updateViaCache: "none" });
  } catch (error) {
    console.warn("no service worker:", error);
    // A certificate that was clicked through is refused here as a matter of security.
    if (error instanceof DOMException && error.name === "SecurityError") listener.is("untrusted");
    else setTimeout(() => void startShell(listener), AGAIN_MS);
    return;
  }
  // A hidden tab of the old version would miss its files: it reloads too. One in front of a person is left alone.
  if (serviceWorker.controller)
    serviceWorker.addEventListener("controllerchange", () => {
      if (asked || document.visibilityState === "hidden") location.reload();
    });
  serviceWorker.addEventListener("message", ({ data }: MessageEvent<{ type?: string } | null>) => {
    if (data?.type !== "stored") return;
    stored = true;
    clearTimeout(asking);
    listener.is("stored");
  });
  const found = registration;
  const look = () => report(found, listener);
  look();
  watch(found.installing, look);
  found.addEventListener("updatefound", () => watch(found.installing, look));
  setInterval(() => void found.update().catch(() => {}), LOOK_MS);
  window.addEventListener("online", () => storeTheRest(found));
}

function watch(worker: ServiceWorker | null, look: () => void): void {
  worker?.addEventListener("statechange", look);
}

/** What a first visit did not wait for: the places beside the bench, then other languages and the invented shop. Nothing is
 * fetched twice; the worker answers once every screen is here, and is asked again until it does. */
function storeTheRest(found: ServiceWorkerRegistration): void {
  found.active?.postMessage({ type: "store-the-rest" });
  clearTimeout(asking);
  if (!stored) asking = setTimeout(() => storeTheRest(found), AGAIN_MS);
}

/** A worker is active only after it has stored what the bench needs; it is asked for the rest then. */
function report(found: ServiceWorkerRegistration, listener: ShellListener): void {
  if (found.active) storeTheRest(found);
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
