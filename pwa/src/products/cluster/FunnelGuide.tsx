import { useState } from "preact/hooks";

import type { ProblemDocument, ClusterLearnRequest, ProductRow, Shop } from "../../documents";
import { EngineProblem, type FunnelLesson, learnFunnel, type PlannedCluster } from "../../state";
import { problemAt } from "../../problems";
import { format, formatNumber, formatRange, problemText, t } from "../../text";
import { ChoiceField, QuantityField } from "../../ui/fields";
import { useUnparsableFields } from "../../ui/useUnparsableFields";
import { rowOptions } from "../../ui/rowOptions";
import { withoutEmpty } from "../shared/request";
import { LastChange } from "../shared/LastChange";
import { withValue, editsOf, NOTHING_CHANGED, undoOf } from "../shared/rowForms";
import { writeEdits } from "../shared/shopEdits";

/** Clusters that may be weighed: their product, and what was planned of them as cluster.learn asks for it. */
export interface WeighableProduct {
  product: ProductRow;
  planned: PlannedCluster;
  /** Other sizes were laid too: the weighed ones must be of the planned one. */
  several?: boolean;
}

type Weighed = Pick<ClusterLearnRequest, "clusters" | "together_kg" | "under_kg">;
const WEIGHED = ["clusters", "together_kg", "under_kg"] as const;
const ACROSS = ["across_1", "across_2", "across_3", "across_4", "across_5", "across_6"];
const LEAST_ACROSS = 3;
const USUAL_COUNT = 10;

/** Weigh ten finished clusters and lay a ruler across some: grams a deposit and its width, kept for their product. */
export function FunnelGuide({ laid, shop }: { laid: WeighableProduct[]; shop: Shop }) {
  const [id, setId] = useState(laid[0]?.product.id ?? "");
  const [open, setOpen] = useState(false);
  const chosen = laid.find((one) => one.product.id === id);
  if (!chosen) return null;
  return (
    <details class="card guide" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{t("shop.guide.funnel")}</summary>
      {open && (
        <>
          <ol>
            {t("shop.guide.funnel_steps")
              .split("\n")
              .map((step) => (
                <li key={step}>{step}</li>
              ))}
          </ol>
          {laid.length > 1 && (
            <ChoiceField label={t("shop.guide.funnel_product")} value={id} options={rowOptions(laid.map(({ product }) => product))} onValue={setId} />
          )}
          {chosen.several && <p>{t("shop.guide.funnel_one_size", { deposit_kg: chosen.planned.deposit_kg })}</p>}
          <Weighing key={id} laid={chosen} shop={shop} />
        </>
      )}
    </details>
  );
}

function Weighing({ laid, shop }: { laid: WeighableProduct; shop: Shop }) {
  const [values, setValues] = useState<Record<string, number | null>>({ clusters: USUAL_COUNT });
  const [unparsable, setParseState] = useUnparsableFields();
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const [lesson, setLesson] = useState<FunnelLesson | null>(null);
  const across = ACROSS.filter((name) => values[name] != null);
  const ready = unparsable.length === 0 && values["clusters"] != null && values["together_kg"] != null && across.length >= LEAST_ACROSS;
  const work = async () => {
    if (!ready) return;
    setProblem(null);
    const { clusters, together_kg, under_kg } = values;
    try {
      setLesson(await learnFunnel({ ...laid.planned, ...withoutEmpty<Weighed>({ clusters, together_kg, under_kg }), across_m: across.map((name) => values[name] ?? 0) }));
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setProblem(error.problem);
    }
  };
  const field = (name: string, label: string, note?: string) => (
    <QuantityField
      key={name}
      label={label}
      name={name.startsWith("across") ? "across_m" : name}
      value={values[name] ?? null}
      problem={problemAt(problem, requestPath(name, across))}
      note={note}
      onValue={(value, fault) => {
        setParseState(name, fault !== null);
        setLesson(null);
        setValues((old) => ({ ...old, [name]: value }));
      }}
    />
  );
  const placed = problem && [...WEIGHED, ...across].some((name) => requestPath(name, across) === problem.field);
  return (
    <>
      {WEIGHED.map((name) => field(name, t(`shop.guide.funnel_${name}`), name === "under_kg" ? t("shop.guide.funnel_under_note") : undefined))}
      <div class="pair widths">{ACROSS.map((name, index) => field(name, t("shop.guide.funnel_across", { n: index + 1 })))}</div>
      {problem && !placed && <p class="field-problem">{problemText(problem)}</p>}
      {lesson ? (
        <LearnedCard lesson={lesson} laid={laid} shop={shop} onKept={() => setLesson(null)} />
      ) : (
        <button type="button" class="go go-quiet" aria-disabled={!ready} onClick={() => void work()}>
          {t("shop.work_it_out")}
        </button>
      )}
      <LastChange />
    </>
  );
}

/** What a field is called in the request: widths stand there without the empty ones. */
function requestPath(name: string, across: string[]): string {
  return across.includes(name) ? `across_m[${across.indexOf(name)}]` : name;
}

interface LearnedProps {
  lesson: FunnelLesson;
  laid: WeighableProduct;
  shop: Shop;
  onKept: () => void;
}

/** What came out beside what was planned, each with its range, and the button that keeps it. */
function LearnedCard({ lesson, laid: { product, planned }, shop, onKept }: LearnedProps) {
  const { deposit_kg, second_kg, spread_m, planned_spread_m, spread_share } = lesson;
  const keep = async () => {
    const found = { deposit_kg, spread_m, ...(second_kg > 0 ? { second_kg } : {}) };
    const draft = Object.entries(found).reduce((all, [name, value]) => withValue(all, `cluster.${name}`, value, true), NOTHING_CHANGED);
    const row = { ...product };
    const edits = editsOf(`products/${product.id}`, row, draft);
    await writeEdits(edits, t("shop.guide.funnel_kept", { name: product.name }), undoOf(edits, row, shop.basis));
    onKept();
  };
  return (
    <div aria-live="polite">
      <p class="answer">{t("shop.guide.funnel_deposit", { deposit_kg, range: formatRange("deposit_kg", lesson.deposit_low_kg, lesson.deposit_high_kg) })}</p>
      {planned.deposit_kg != null && <p class="quiet">{t("shop.guide.funnel_planned", { planned: format("deposit_kg", planned.deposit_kg) })}</p>}
      {second_kg > 0 && <p>{t("shop.guide.funnel_second", { second_kg })}</p>}
      <p class="answer">{t("shop.guide.funnel_spread", { spread_m, range: formatRange("spread_m", lesson.spread_low_m, lesson.spread_high_m) })}</p>
      {planned_spread_m !== null && spread_share !== null && (
        <p class="quiet">{t("shop.guide.funnel_compared", { planned_spread_m, percent: formatNumber(100 * spread_share, 0) })}</p>
      )}
      <button type="button" class="go" onClick={() => void keep()}>
        {t("shop.guide.funnel_keep", { name: product.name })}
      </button>
    </div>
  );
}
