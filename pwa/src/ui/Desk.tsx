import type { ComponentChildren } from "preact";

import { t } from "../text";

interface Props {
  title: string;
  /** Which of the places in the foot this is, or "". */
  here: "today" | "plan" | "batches" | "help" | "settings" | "";
  children?: ComponentChildren;
}

const PLACES = [
  ["today", "/"],
  ["plan", "/plan"],
  ["batches", "/batches"],
  ["help", "/help"],
  ["settings", "/settings"],
] as const;

/** The frame of every desk screen: heading, content, the ways to the others. */
export function Desk({ title, here, children }: Props) {
  return (
    <div class="desk">
      {/* It scrolls, so that it must be reachable by the keyboard even where nothing in it is. */}
      <main tabIndex={0}>
        <h1>{title}</h1>
        {children}
      </main>
      <nav class="places" aria-label={t("desk.places")}>
        {PLACES.map(([name, href]) => (
          <a key={name} href={href} aria-current={name === here ? "page" : undefined}>
            {t(`desk.place_${name}`)}
          </a>
        ))}
      </nav>
    </div>
  );
}
