import { formatDuration, t } from "../../text";
import type { ComparedRow } from "../../ui/ComparedTable";
import { dipRows } from "../shared/dipRows";
import { PouredCompared } from "../shared/PouredCompared";
import type { RecordOf } from "../kindViews";
import { jacketOf } from "./slabPictures";

/** Planned beside happened, and the yield. */
export function SlabCompared({ record }: { record: RecordOf<"slab"> }) {
  return <PouredCompared record={record} {...jacketed(record)} more={dipRows(record.plan, record.run)} />;
}

/** How long it was in the water jacket; nothing in an oven. */
function jacketed({ plan: { reply }, run }: RecordOf<"slab">): { melted?: ComparedRow } {
  if (!reply.jacket) return {};
  const took_s = jacketOf(run, null)?.poured_s ?? null;
  const happened = took_s === null ? "–" : formatDuration(took_s);
  return { melted: { what: t("desk.row_jacket"), planned: formatDuration(reply.jacket.seconds_s), happened } };
}
