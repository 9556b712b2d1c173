import { type ComponentChildren, createContext } from "preact";
import { useContext } from "preact/hooks";

import { t } from "../text";
import { AidSign } from "./icons";

interface Props {
  title: string;
  /** Which of the places in the foot this is, or "". */
  here: "today" | "orders" | "stock" | "records" | "shop" | "";
  children?: ComponentChildren;
}

const PLACES = [
  ["today", "/"],
  ["orders", "/orders"],
  ["stock", "/stock"],
  ["records", "/batches"],
  ["shop", "/shop"],
] as const;

/** What the app puts into every head besides: who is at this phone. */
export const InHead = createContext<ComponentChildren>(null);

/** The frame of every desk screen: heading with first aid beside it, content, the ways to the others. */
export function Desk({ title, here, children }: Props) {
  return (
    <div class="desk">
      {/* It scrolls, so that it must be reachable by the keyboard even where nothing in it is. */}
      <main tabIndex={0}>
        <header class="desk-head">
          <h1>{title}</h1>
          <a class="head-way" href="/help">
            <AidSign size={26} />
            {t("desk.place_help")}
          </a>
          {useContext(InHead)}
        </header>
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
