import type { ComponentChildren, RefObject } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";

import { t } from "../text";

interface Props {
  title: string;
  onClose: () => void;
  /** Further buttons beside "print" and "back". */
  more?: ComponentChildren;
  children: ComponentChildren;
}

/** Letters shrink in such steps, down to the least that can still be read at arm's length. */
const STEP = 0.03;
const MOST_STEPS = 12;
/** 190 mm in CSS pixels (1 in = 96 px), and a margin on the screen. */
const WIDE_PX = (190 / 25.4) * 96;
const MARGIN_PX = 42;

/** One printed page, shown as it will come out: it fits A4 and US Letter, black on white whatever the theme. */
export function Paper({ title, onClose, more, children }: Props) {
  const page = useRef<HTMLElement>(null);
  const head = useRef<HTMLButtonElement>(null);
  const scale = useRoom();
  useFit(page);
  useEffect(() => head.current?.focus(), []);
  return (
    <main class="paper-over" aria-label={title} tabIndex={0}>
      <div class="paper-bar">
        <button type="button" class="go" ref={head} onClick={() => print()}>
          {t("button.print")}
        </button>
        {more}
        <button type="button" class="go go-quiet" onClick={onClose}>
          {t("button.back")}
        </button>
      </div>
      <div class="paper-room" style={`--scale:${scale}`}>
        <article class="paper" ref={page}>
          <div class="paper-inner">{children}</div>
        </article>
      </div>
    </main>
  );
}

/** How much smaller than on paper the page is shown, to be seen whole across. */
function useRoom(): number {
  const fitting = () => Math.min(1, (innerWidth - MARGIN_PX) / WIDE_PX);
  const [scale, setScale] = useState(fitting);
  useEffect(() => {
    const take = () => setScale(fitting());
    addEventListener("resize", take);
    return () => removeEventListener("resize", take);
  }, []);
  return scale;
}

/** Keeps the page one page: smaller letters first; then the end of a very long list stays in the app, and that is said. */
function useFit(page: RefObject<HTMLElement | null>): void {
  useLayoutEffect(() => {
    const sheet = page.current;
    const inner = sheet?.firstElementChild;
    if (!sheet || !inner || typeof ResizeObserver === "undefined") return;
    const fit = () => fitted(sheet, inner as HTMLElement);
    fit();
    // Pictures are drawn again for their room: then it is measured anew.
    const watch = new ResizeObserver(() => requestAnimationFrame(fit));
    watch.observe(inner);
    return () => watch.disconnect();
  });
}

function fitted(sheet: HTMLElement, inner: HTMLElement): void {
  const fits = () => inner.scrollHeight <= sheet.clientHeight;
  const lines = [...sheet.querySelectorAll<HTMLElement>(".timeline li")];
  const note = sheet.querySelector<HTMLElement>(".left-out");
  const leave = (left: number) => {
    lines.forEach((line, index) => (line.hidden = index >= lines.length - left));
    if (note) [note.hidden, note.textContent] = [left === 0, t("paper.left_out", { n: left })];
    return fits();
  };
  const shrink = (steps: number) => {
    sheet.style.setProperty("--fit", (1 - steps * STEP).toFixed(2));
    return fits();
  };
  leave(0);
  if (!shrink(least(MOST_STEPS, shrink))) leave(least(lines.length, leave));
}

/** The least number for which something is true, found by halves; `most` where it is so for none below. */
function least(most: number, is: (number: number) => boolean): number {
  let [under, found] = [-1, most];
  while (found - under > 1) {
    const middle = (under + found) >> 1;
    if (is(middle)) found = middle;
    else under = middle;
  }
  return found;
}
