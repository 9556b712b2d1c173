import { useLayoutEffect } from "preact/hooks";

import { batches, now, type Ring, rings, silence, swallowClick } from "../state";
import { figure, t } from "../text";
import { type RingMark, RingScreen, RingStrip } from "../ui/RingScreen";
import { isTyping } from "./bench/drafts";
import { go, path } from "../router";
import { promptText } from "./promptText";

const FIRST_TAPS = ["pointerdown", "keydown"] as const;

/** Due clocks over whatever is shown. The first tap anywhere only silences: it reaches nothing under it. */
export function Ringing() {
  const ring = rings.value.find((one) => one.clock.sound === "too_hot") ?? rings.value[0];
  const ringing = ring !== undefined;
  // With the drawing, not after it: a tap on a ring that is seen is never lost.
  useLayoutEffect(() => (ringing ? catchFirstTap() : undefined), [ringing]);
  if (!ring) return null;
  const mark = markOf(ring);
  if (!mark.too_hot && somethingIsTyped(ring)) return <RingStrip ring={mark} />;
  return <RingScreen ring={mark} more={rings.value.length - 1} onSilence={silenceFirst} />;
}

/** Silences; from a desk screen it leads to the batch that rang. */
function silenceFirst(): void {
  const ring = rings.value[0];
  silence();
  if (ring && !path.value.startsWith("/bench/") && !deskIsTyping()) go(`/bench/${ring.batchId}`);
}

function catchFirstTap(): () => void {
  const first = (event: Event) => {
    if (event instanceof KeyboardEvent && (event.key === "Tab" || event.key === "Shift")) return;
    event.preventDefault();
    event.stopPropagation();
    swallowClick();
    silenceFirst();
  };
  for (const kind of FIRST_TAPS) addEventListener(kind, first, { capture: true });
  return () => {
    for (const kind of FIRST_TAPS) removeEventListener(kind, first, true);
  };
}

function deskIsTyping(): boolean {
  const at = document.activeElement;
  return at instanceof HTMLTextAreaElement || (at instanceof HTMLInputElement && at.type !== "radio");
}

function somethingIsTyped(ring: Ring): boolean {
  const here = path.value.startsWith("/bench/") ? path.value.slice("/bench/".length) : ring.batchId;
  return deskIsTyping() || isTyping(here);
}

function markOf({ batchId, clock, lateMs }: Ring): RingMark {
  const batch = batches.value.get(batchId);
  const advice = batch?.advice;
  const here = path.value === `/bench/${batchId}`;
  const number = advice?.number && advice.number.name !== "due_ms" ? advice.number : null;
  return {
    name: t(`clock.${clock.name}`),
    sentence: advice ? promptText(advice) : "",
    batch: here ? null : (batch?.plan.name ?? null),
    late_s: lateMs > 2000 ? (now.value - clock.due_ms) / 1000 : 0,
    figure: number ? figure(number.name, number.value) : null,
    too_hot: clock.sound === "too_hot",
    tells: clock.tells ? t(clock.tells.code) : "",
  };
}
