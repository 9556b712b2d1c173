import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

export type Place = "bench" | "desk";
export interface Box {
  width: number;
  height: number;
  /** Size of the lettering in CSS pixels: nothing at the bench is smaller than 20. */
  letter: number;
  place: Place;
}

interface Props {
  label: string;
  place: Place;
  /** Height over width at the desk; at the bench the picture takes the room there is. */
  ratio: number;
  /** The greatest height at the desk, in CSS pixels. */
  most: number;
  /** The least height at the desk, but for print: its lettering stays as large on a narrow screen. */
  least?: number;
  draw: (box: Box) => ComponentChildren;
}

/** A drawing in real pixels of the room it has, so that its lettering keeps its size. */
export function Picture({ label, place, ratio, most, least = 0, draw }: Props) {
  const frame = useRef<HTMLDivElement>(null);
  const [room, setRoom] = useState({ width: 358, height: Math.min(most, 358 * ratio) });
  useEffect(() => {
    const element = frame.current;
    if (!element || typeof ResizeObserver === "undefined") return;
    // A printed page is wide enough, and has no room to spare.
    const floor = element.closest(".paper") ? 0 : least;
    const measure = () => setRoom(roomOf(element, place, (width) => Math.min(most, Math.max(floor, Math.round(width * ratio)))));
    const watch = new ResizeObserver(measure);
    watch.observe(element);
    measure();
    return () => watch.disconnect();
  }, [place, ratio, most, least]);
  const { width, height } = room;
  return (
    <div class={`picture picture-${place}`} ref={frame}>
      {height > 0 && (
        <svg role="img" aria-label={label} viewBox={`0 0 ${width} ${height}`} width={width} height={height}>
          {draw({ width, height, letter: place === "bench" ? 20 : 14, place })}
        </svg>
      )}
    </div>
  );
}

/** At the bench a picture with less than 100 pixels of height says nothing: it makes room for the button instead. */
function roomOf(element: HTMLElement, place: Place, highAtDesk: (width: number) => number) {
  const width = Math.round(element.clientWidth) || 358;
  if (place === "desk") return { width, height: highAtDesk(width) };
  const height = Math.floor(element.clientHeight);
  return { width, height: height < 100 ? 0 : height };
}

/** Hatching for windows and trim; the id is unique in the drawing it is used in. */
export function Hatch({ id, gap, line }: { id: string; gap: number; line: string }) {
  return (
    <pattern id={id} width={gap} height={gap} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
      <path d={`M0 0V${gap}`} class={line} />
    </pattern>
  );
}
