import { useEffect } from "preact/hooks";

import type { Advice } from "../documents";
import { batches, heldByOtherDevice, rings, settings, speak } from "../state";
import { figure, reader, t } from "../text";
import { path } from "../router";
import { promptText } from "./promptText";

/** Speaks what the bench says whenever it says something new, and each clock that rings. Draws nothing. */
export function Speaking() {
  const ring = rings.value.find((one) => one.clock.sound === "too_hot") ?? rings.value[0];
  const words = settings.value.spoken ? (ring ? t(`clock.${ring.clock.name}`) : promptHere()) : "";
  useEffect(() => {
    if (words) void speak(words, reader.value.language);
  }, [words]);
  return null;
}

/** The prompt of the batch on the screen, with its number; "" where none is shown. */
function promptHere(): string {
  const batch = path.value.startsWith("/bench/") ? batches.value.get(path.value.slice("/bench/".length)) : undefined;
  if (!batch?.advice || heldByOtherDevice(batch)) return "";
  return promptOf(batch.advice);
}

function promptOf(advice: Advice): string {
  const { number } = advice;
  const prompt = promptText(advice);
  // A countdown would be old before it is spoken.
  if (!number || number.name === "due_ms") return prompt;
  const { text, unit } = figure(number.name, number.value);
  return prompt.includes(text) ? prompt : `${prompt} ${text} ${unit}`.trim();
}
