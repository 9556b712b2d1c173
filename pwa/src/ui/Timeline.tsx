import { format, formatDay, formatTime, hasText, t } from "../text";

export interface Happening {
  id: string;
  at_ms: number;
  kind: string;
  body: Record<string, unknown>;
  /** Who was at the phone, by name; null: nobody in particular. */
  by: string | null;
  /** Its words, where they are not those of an event at the bench. */
  words?: string;
  undone: boolean;
  ignored: boolean;
}

/** What happened, in words, in its order, with its day where there are several; what was taken back is struck through and said to be. */
export function Timeline({ happenings }: { happenings: Happening[] }) {
  const days = new Set(happenings.map(({ at_ms }) => new Date(at_ms).toDateString()));
  const when = days.size > 1 ? formatDay : formatTime;
  return (
    <ol class="timeline">
      {happenings.map((one) => (
        <li key={one.id} class={one.undone || one.ignored ? "undone" : ""}>
          <time dateTime={new Date(one.at_ms).toISOString()}>{when(one.at_ms)}</time>
          <span>
            {one.undone || one.ignored ? <s>{one.words ?? happeningWords(one)}</s> : (one.words ?? happeningWords(one))}
            {one.by && <em> · {one.by}</em>}
            {typeof one.body["typed_at_ms"] === "number" && <em> {t("desk.typed_later")}</em>}
            {one.undone && <em> {t("desk.taken_back")}</em>}
            {one.ignored && !one.undone && <em> {t("desk.not_counted")}</em>}
          </span>
        </li>
      ))}
    </ol>
  );
}

/** The words of an event: `event.<kind>`, or with its yes or no (`event.stirred_free`, `event.stirred_not_free`). */
export function happeningWords({ kind, body }: Pick<Happening, "kind" | "body">): string {
  for (const [name, value] of Object.entries(body)) {
    const key = `event.${kind}_${value ? "" : "not_"}${name}`;
    if (typeof value === "boolean" && hasText(key)) return t(key, body);
  }
  const why = typeof body["reason"] === "string" && kind !== "left_out" ? ` (${body["text"] || t(`why.${body["reason"]}`)})` : "";
  if (kind === "step_skipped") return t("event.step_skipped", { step: stepName(body["step"]) }) + why;
  if (kind === "thrown_away") return t("event.thrown_away") + why;
  if (kind === "under_lot_named" && !body["lot"]) return t("event.under_lot_unknown");
  return hasText(`event.${kind}`) ? t(`event.${kind}`, body) : t("event.unknown", { kind: format("kind", kind) });
}

export function stepName(step: unknown): string {
  return hasText(`step.${String(step)}`) ? t(`step.${String(step)}`) : String(step).replaceAll("_", " ");
}
