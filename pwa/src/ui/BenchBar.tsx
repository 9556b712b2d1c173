import { t } from "../text";
import { AidSign, MoreSign } from "./icons";
import { RedoButton, UndoButton, type UndoProps } from "./UndoButton";

interface Props extends UndoProps {
  onAid: () => void;
  onMore: () => void;
}

/** Undo, first aid, more: the same place on every bench screen; below them for a while what was taken back. */
export function BenchBar({ onAid, onMore, ...undo }: Props) {
  return (
    <nav class="bar" aria-label={t("screen.bench_bar")}>
      {undo.undoes === null ? <p class="no-undo">{t("screen.nothing_to_undo")}</p> : <UndoButton {...undo} />}
      <button type="button" class="tool" onClick={onAid}>
        <AidSign />
        {t("button.first_aid")}
      </button>
      <button type="button" class="tool" onClick={onMore}>
        <MoreSign />
        {t("button.more")}
      </button>
      {undo.redoes !== null && <RedoButton {...undo} />}
    </nav>
  );
}
