import { t } from "../text";
import { AidSign, BackSign, MoreSign } from "./icons";

interface Props {
  /** What undo would take back, in words; null: nothing. */
  undoes: string | null;
  onUndo: () => void;
  onAid: () => void;
  onMore: () => void;
}

/** Undo, first aid, more: the same place on every bench screen. */
export function BenchBar({ undoes, onUndo, onAid, onMore }: Props) {
  return (
    <nav class="bar" aria-label={t("screen.bench_bar")}>
      <UndoButton undoes={undoes} onUndo={onUndo} />
      <button type="button" class="tool" onClick={onAid}>
        <AidSign />
        {t("button.first_aid")}
      </button>
      <button type="button" class="tool" onClick={onMore}>
        <MoreSign />
        {t("button.more")}
      </button>
    </nav>
  );
}

function UndoButton({ undoes, onUndo }: { undoes: string | null; onUndo: () => void }) {
  if (undoes === null) return <p class="no-undo">{t("screen.nothing_to_undo")}</p>;
  return (
    <button type="button" class="undo" onClick={onUndo}>
      <BackSign />
      <span>
        {t("button.undo")} <b>{undoes}</b>
      </span>
    </button>
  );
}
