import { signal } from "@preact/signals";

/** The path shown; the history of the browser is the only other place that knows it. */
export const path = signal(location.pathname);

export function go(to: string): void {
  if (to !== location.pathname) history.pushState(null, "", to);
  path.value = location.pathname;
  scrollTo(0, 0);
}

/** Turns plain links of this app into steps of the history; everything else stays the browser's. */
export function followLink(event: MouseEvent): void {
  const link = (event.target as Element | null)?.closest?.("a[href^='/']");
  if (!link || event.defaultPrevented || event.button !== 0 || event.metaKey || event.ctrlKey || event.shiftKey) return;
  if (link.hasAttribute("download") || link.getAttribute("target")) return;
  event.preventDefault();
  go(link.getAttribute("href") ?? "/");
}

addEventListener("popstate", () => {
  path.value = location.pathname;
});
