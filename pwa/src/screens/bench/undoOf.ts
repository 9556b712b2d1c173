import { t } from "../../text";
import type { UndoProps } from "../../ui/UndoButton";
import type { BenchProps } from "./benchProps";

/** What stands on the buttons of undo and redo. */
export function undoOf({ advice: { undo, redo }, onUndo, onRedo }: BenchProps): UndoProps {
  return { undoes: undo && t(undo.code), onUndo, redoes: redo && t(redo.code), onRedo };
}
