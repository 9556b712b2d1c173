import { BatchesScreen } from "../batches/BatchesScreen";
import { LearnedScreen } from "../learned/LearnedScreen";
import { RecordScreen } from "../record/RecordScreen";

/** /batches, /batches/<id>, /batches/<id>/<part>, /learned. */
export function Screen({ at }: { at: string }) {
  const [, place, id, part] = at.split("/");
  if (place === "learned") return <LearnedScreen />;
  return id ? <RecordScreen batchId={id} part={part} key={`${id} ${part === "type"}`} /> : <BatchesScreen />;
}
