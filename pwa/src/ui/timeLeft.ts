import { formatCountdown, t } from "../text";

/** Time left as a card says it: "4:37", "47 min", or that it is due. Input in ms. */
export function formatTimeLeft(leftMs: number): string {
  if (leftMs <= 0) return t("screen.due");
  const { text, unit } = formatCountdown(leftMs);
  return unit ? `${text} ${unit}` : text;
}
