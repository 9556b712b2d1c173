import { Fragment, type VNode } from "preact";
import { useEffect, useMemo, useRef, useState } from "preact/hooks";

interface Props<T> {
  all: T[];
  /** The card of one, with its key. */
  card: (one: T) => VNode;
}

/** So many cards are drawn in one go. */
const PART = 12;
/** They are drawn so long before one scrolls to them (px). */
const AHEAD = 1600;

/** Cards in a list of any length: those near the reader are drawn, more as one scrolls on. */
export function LongList<T>({ all, card }: Props<T>) {
  const [parts, setParts] = useState(1);
  const end = useRef<HTMLLIElement>(null);
  // A part drawn before is not looked at again while one scrolls.
  const drawn = useMemo(() => new Map<number, VNode>(), [all, card]);
  const more = parts * PART < all.length;
  useEffect(() => {
    if (!end.current) return undefined;
    const near = new IntersectionObserver((entries) => entries.some((one) => one.isIntersecting) && setParts((before) => before + 1), {
      root: end.current.closest("main"),
      rootMargin: `${AHEAD}px`,
    });
    near.observe(end.current);
    return () => near.disconnect();
  }, [parts, more]);
  return (
    <ul class="cards cards-long">
      {Array.from({ length: Math.min(parts, Math.ceil(all.length / PART)) }, (_, nth) => {
        const part = drawn.get(nth) ?? <Fragment key={nth}>{all.slice(nth * PART, (nth + 1) * PART).map(card)}</Fragment>;
        drawn.set(nth, part);
        return part;
      })}
      {more && <li ref={end} class="cards-end" aria-hidden="true" />}
    </ul>
  );
}
