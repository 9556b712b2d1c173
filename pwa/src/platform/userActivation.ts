/** What grants a page sound and wake lock. A finger grants nothing when it comes down, only when it goes up (HTML,
 * "activation triggering input event"). */
const GRANTING = ["pointerup", "click", "keydown"] as const;

/** How long after a finger went up its click may still come (ms). */
const CLICK_MS = 600;

/** Calls back at every tap and key for good, before anything on the page can stop the event. */
export function onEveryTap(tapped: () => void): void {
  for (const kind of GRANTING) window.addEventListener(kind, tapped, { capture: true, passive: true });
}

/** The click that follows a finger reaches nothing: what lies under it may have changed meanwhile. */
export function swallowClick(): void {
  const swallow = (event: Event) => {
    event.preventDefault();
    event.stopPropagation();
  };
  window.addEventListener("click", swallow, { capture: true, once: true });
  setTimeout(() => window.removeEventListener("click", swallow, true), CLICK_MS);
}
