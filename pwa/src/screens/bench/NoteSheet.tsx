import { t } from "../../text";
import { Sheet } from "../../ui/Sheet";
import { NoteForm } from "../NoteForm";

/** A note on the batch, written without leaving it. */
export function NoteSheet({ onKeep, onClose }: { onKeep: (text: string) => Promise<boolean>; onClose: () => void }) {
  const keep = async (text: string) => {
    const kept = await onKeep(text);
    if (kept) onClose();
    return kept;
  };
  return (
    <Sheet title={t("screen.note_title")} onClose={onClose}>
      <NoteForm onKeep={keep} button="side" />
    </Sheet>
  );
}
