import { effect, signal } from "@preact/signals";

import { settings } from "../state";
import { reader } from "../text";
import { path } from "../router";

const dark = matchMedia("(prefers-color-scheme: dark)");
const systemDark = signal(dark.matches);
dark.addEventListener("change", () => {
  systemDark.value = dark.matches;
});

/** Writes place, theme and language onto the root element, where the style sheets read them. */
export function followTheme(): () => void {
  return effect(() => {
    const root = document.documentElement;
    const { theme } = settings.value;
    root.dataset["place"] = path.value.startsWith("/bench/") ? "bench" : "desk";
    root.dataset["theme"] = theme === "auto" ? (systemDark.value ? "dark" : "light") : theme;
    root.lang = reader.value.language;
  });
}
