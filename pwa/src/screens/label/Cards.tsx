import { useMemo } from "preact/hooks";

import type { Pack, Shop } from "../../documents";
import { alone, type Drawing } from "../../labels/drawing";
import { guideCard, MOST_POCKETS } from "../../labels/guideCard";
import { type Floors, label, type LabelText } from "../../labels/label";
import { pdf } from "../../labels/pdf";
import { handOverFile } from "../../state";
import { t } from "../../text";
import { nameOf } from "../orders/orderWords";
import { Preview } from "./Preview";

/** A card beside loose goods: a seventh of a sheet, A7 lying. */
const TRAY = { width: 105, height: 74, margin: 5 };

/** The card in a box of several products that says which piece is which. */
export function GuideCardPage({ pack, shop }: { pack: Pack; shop: Shop }) {
  const box = shop.boxes.find((one) => one.id === pack.box_id);
  const lines = (box?.lines ?? []).map(({ product_id, count }) => ({ name: nameOf({ box_id: null, product_id }), count }));
  const card = useMemo(() => guideCard({ title: box?.name || t("labels.guide_title"), lines, columns: box?.columns ?? null, rows: box?.rows ?? null }), [box, shop]);
  if (card === null) return <Refused words={t("labels.guide_many", { n: MOST_POCKETS })} />;
  if ("letters" in card) return <Refused words={t("labels.unknown_letters", card)} />;
  return <Card drawing={card} file="guide-card.pdf" title={t("labels.kind_guide")} />;
}

/** What a label says but for its net weight, for pieces that are sold loose by weight. */
export function TrayCardPage({ text, floors }: { text: LabelText; floors: Floors }) {
  const card = useMemo(() => label({ ...text, net: "", eMark: false }, TRAY, floors), [text, floors]);
  if (!("drawing" in card)) return <Refused words={card.letters ? t("labels.unknown_letters", { letters: card.letters }) : t("labels.never_fits", { size: `${TRAY.width} × ${TRAY.height} mm` })} />;
  return <Card drawing={card.drawing} file="tray-card.pdf" title={t("labels.kind_tray")} />;
}

/** Why there is nothing to print. */
export function Refused({ words }: { words: string }) {
  return (
    <p class="card card-wrong" role="alert">
      {words}
    </p>
  );
}

function Card({ drawing, file, title }: { drawing: Drawing; file: string; title: string }) {
  const bytes = useMemo(() => pdf([alone(drawing)], title), [drawing]);
  return (
    <>
      <Preview page={alone(drawing)} label={title} />
      <button type="button" class="go" onClick={() => void handOverFile(file, "application/pdf", bytes)}>
        {t("labels.print_card")}
      </button>
    </>
  );
}
