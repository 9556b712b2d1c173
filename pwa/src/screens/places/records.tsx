import { BatchesScreen } from "../batches/BatchesScreen";
import { LearnedScreen } from "../learned/LearnedScreen";
import { PackForm } from "../pack/PackForm";
import { PackScreen } from "../pack/PackScreen";
import { RecordScreen } from "../record/RecordScreen";
import { TraceScreen } from "../trace/TraceScreen";

/** /batches, /batches/<id>, /batches/<id>/<part>, /learned, /packs/<id>, /trace/<kind>/<id>, /trace/<kind>/<id>/recall. */
export function Screen({ at }: { at: string }) {
  const [, place, id, part] = at.split("/");
  if (place === "learned") return <LearnedScreen />;
  if (place === "trace") return <TraceScreen key={at} start={`${id}/${decodeURIComponent(part ?? "")}`} recall={at.endsWith("/recall")} />;
  if (place === "packs") return <PackScreen key={id} packId={id ?? ""} />;
  if (id && part === "pack") return <PackForm key={id} batchId={id} />;
  return id ? <RecordScreen batchId={id} part={part} key={`${id} ${part === "type"}`} /> : <BatchesScreen />;
}
