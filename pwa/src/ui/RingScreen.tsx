import { useEffect, useRef } from "preact/hooks";

import { t } from "../text";
import { Digits } from "./BigNumber";

export interface RingMark {
  name: string;
  /** What to do about it, or "". */
  sentence: string;
  batch: string | null;
  /** How late it is, in s. */
  late_s: number;
  figure: { text: string; unit: string } | null;
  too_hot: boolean;
  /** What the tap says besides silencing, in the words of its button; "": nothing. */
  tells: string;
}

interface Props {
  ring: RingMark;
  more: number;
  onSilence: () => void;
}

/** A due clock, over the whole screen. Any first tap only silences it; the screen under it is untouched. */
export function RingScreen({ ring, more, onSilence }: Props) {
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus({ preventScroll: true }), []);
  return (
    <div class={ring.too_hot ? "ring ring-hot" : "ring"} role="alertdialog" aria-modal="true" aria-labelledby="ring-name" aria-describedby="ring-what">
      <div class="ring-words">
        {ring.batch && <p class="ring-batch">{ring.batch}</p>}
        <h2 id="ring-name" style={sizedFor(ring.name)}>
          {ring.name}
        </h2>
        <p id="ring-what">{ring.sentence}</p>
      </div>
      {ring.figure && (
        <p class="number">
          <Digits {...ring.figure} />
        </p>
      )}
      {ring.late_s >= 2 && <p class="ring-late">{t("screen.late", { late_s: ring.late_s })}</p>}
      {more > 0 && <p class="ring-late">{t("screen.ring_more", { n: more })}</p>}
      <button type="button" class="act ring-act" ref={button} onClick={onSilence}>
        <span>{ring.tells || t("button.silence")}</span>
        <small>{t(ring.tells ? "screen.tap_when_done" : "screen.tap_anywhere")}</small>
      </button>
    </div>
  );
}

/** The letters of its longest word, by which the style sheet keeps that word whole ("refrigerador"). */
function sizedFor(name: string): string {
  return `--longest: ${Math.max(...name.split(/[\s-]/).map((word) => word.length))}`;
}

/** The same as a strip, while something is being typed. */
export function RingStrip({ ring }: { ring: RingMark }) {
  return (
    <div class="ring-strip" role="alert">
      <b style={sizedFor(ring.name)}>{ring.name}</b>
      <span>
        {ring.batch && <>{ring.batch}: </>}
        {ring.late_s >= 2 ? t("screen.late", { late_s: ring.late_s }) : t("screen.tap_to_silence")}
      </span>
    </div>
  );
}
