import { isTrue, outOfPlace, type Paper, rulerLength, rulerPage, type Sheet } from "../../labels/paper";
import { pdf } from "../../labels/pdf";
import { handOverFile } from "../../state";
import { t } from "../../text";
import { CountField } from "../../ui/CountField";
import { ChoiceField, QuantityField } from "../../ui/fields";
import { MoreFields } from "../../ui/MoreFields";
import { onSheet } from "./labelPaper";

const M = 1000;
const PLACES = ["x0", "y0", "dx", "dy", "offset_x", "offset_y"] as const;

/** On what labels are printed, and whether this printer prints them as large as they are. */
export function PaperFields({ paper, onPaper }: { paper: Paper; onPaper: (paper: Paper) => void }) {
  const wrong = outOfPlace(paper);
  const sheets = (["one", "a4", "letter"] as const).map((value) => ({ value, label: t(`labels.sheet_${value}`) }));
  return (
    <section class="card">
      <ChoiceField label={t("labels.paper")} value={paper.sheet} options={sheets} onValue={(sheet) => onPaper(onSheet(paper, sheet as Sheet | "one"))} />
      {paper.sheet !== "one" && (
        <MoreFields wrong={wrong !== null} title={t("labels.sheet_layout")}>
          <CountField label={t("labels.columns")} value={paper.columns} least={1} most={50} onValue={(columns) => onPaper({ ...paper, columns })} />
          <CountField label={t("labels.rows")} value={paper.rows} least={1} most={100} onValue={(rows) => onPaper({ ...paper, rows })} />
          {PLACES.map((name) => (
            <QuantityField key={name} label={t(`labels.place_${name}`)} name="length_m" value={paper[name] / M} problem={null} onValue={(value) => value !== null && onPaper({ ...paper, [name]: value * M })} />
          ))}
        </MoreFields>
      )}
      {wrong && (
        <p class="warning-line" role="alert">
          {t(`labels.wrong_${wrong}`)}
        </p>
      )}
      <Ruler paper={paper} onPaper={onPaper} />
    </section>
  );
}

/** A line is printed and measured once: a printer that shrinks pages makes letters too small. */
function Ruler({ paper, onPaper }: { paper: Paper; onPaper: (paper: Paper) => void }) {
  const length_m = rulerLength(paper) / M;
  const print = () => {
    const page = rulerPage(paper, t("labels.ruler_line", { length_m }));
    void handOverFile("ruler.pdf", "application/pdf", pdf([page], t("labels.ruler")));
  };
  return (
    <>
      {!isTrue(paper) && <p class="warning-line">{paper.measured === null ? t("labels.measure_first", { length_m }) : t("labels.not_true", { measured_m: paper.measured / M, length_m })}</p>}
      <button type="button" class="go go-quiet" onClick={print}>
        {t("labels.print_ruler")}
      </button>
      <QuantityField label={t("labels.measured")} name="length_m" value={paper.measured === null ? null : paper.measured / M} problem={null} onValue={(value) => onPaper({ ...paper, measured: value === null ? null : value * M })} />
      {isTrue(paper) && <p class="quiet">{t("labels.is_true", { length_m })}</p>}
    </>
  );
}
