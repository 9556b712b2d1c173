import { t } from "../text";
import { BackSign } from "./icons";
import { hasKeyLain } from "./keyPlace";

export interface UndoProps {
  /** What undo would take back, in words; null: nothing. */
  undoes: string | null;
  onUndo: () => void;
  /** What was taken back last and may be put back, in words; null: nothing. */
  redoes: string | null;
  onRedo: () => void;
}

/** Takes the last step back. Where a key has just lain, a tap is still meant for the key. */
export function UndoButton({ undoes, onUndo }: Pick<UndoProps, "undoes" | "onUndo">) {
  return (
    <button type="button" class="undo" onClick={(event) => !hasKeyLain(event.currentTarget) && onUndo()}>
      <BackSign />
      <span>
        {t("button.undo")} <b>{undoes}</b>
      </span>
    </button>
  );
}

/** Says what was taken back, and puts it back, until hands go on. */
export function RedoButton({ redoes, onRedo }: Pick<UndoProps, "redoes" | "onRedo">) {
  return (
    <div class="redo-place" role="status">
      <button type="button" class="redo" onClick={(event) => !hasKeyLain(event.currentTarget) && onRedo()}>
        {t("button.put_back", { what: redoes })}
      </button>
    </div>
  );
}
