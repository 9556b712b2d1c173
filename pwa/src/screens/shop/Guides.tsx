import { useState } from "preact/hooks";

import type { ProblemDocument } from "../../documents";
import { densityOf, EngineProblem, ovenPowerOf } from "../../state";
import { problemAt } from "../../problems";
import { problemText, t } from "../../text";
import { Caution } from "../../ui/Caution";
import { QuantityField } from "../../ui/fields";

/** Weigh a known volume: mass over volume. */
export function DensityGuide({ onMeasured }: { onMeasured: (density_kg_m3: number) => void }) {
  return (
    <Guide
      name="density"
      caution="caution.set_up"
      fields={["mass_kg", "volume_m3"]}
      measure={([mass, volume]) => densityOf(mass ?? 0, volume ?? 0)}
      found="density_kg_m3"
      onMeasured={onMeasured}
    />
  );
}

/** Heat a weighed bowl of cold water: what the oven gives. */
export function WaterGuide({ onMeasured }: { onMeasured: (power_w: number) => void }) {
  return (
    <Guide
      name="water"
      caution="caution.superheated"
      fields={["water_kg", "start_c", "end_c", "seconds_s"]}
      measure={async ([water_kg, start_c, end_c, seconds_s]) =>
        (await ovenPowerOf({ water_kg: water_kg ?? 0, start_c: start_c ?? 0, end_c: end_c ?? 0, seconds_s: seconds_s ?? 0 })).power_w
      }
      found="rated_w"
      onMeasured={onMeasured}
    />
  );
}

interface Props {
  name: "density" | "water";
  /** What may hurt somebody at it. */
  caution: string;
  fields: string[];
  measure: (values: (number | null)[]) => Promise<number>;
  /** The name of what comes out; its end says the unit. */
  found: string;
  onMeasured: (value: number) => void;
}

function Guide({ name, caution, fields, measure, found, onMeasured }: Props) {
  const [values, setValues] = useState<Record<string, number | null>>({});
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const [result, setResult] = useState<number | null>(null);
  const full = fields.every((field) => values[field] != null);
  const work = async () => {
    if (!full) return;
    setProblem(null);
    setResult(null);
    try {
      setResult(await measure(fields.map((field) => values[field] ?? null)));
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setProblem(error.problem);
    }
  };
  return (
    <details class="card guide">
      <summary>{t(`shop.guide.${name}`)}</summary>
      <Caution word="WARNING" code={caution} />
      <ol>
        {t(`shop.guide.${name}_steps`)
          .split("\n")
          .map((step) => (
            <li key={step}>{step}</li>
          ))}
      </ol>
      {fields.map((field) => (
        <QuantityField
          key={field}
          label={t(`shop.guide.${name}_${field}`)}
          name={field}
          value={values[field] ?? null}
          problem={problemAt(problem, field)}
          onValue={(value) => (setResult(null), setValues((old) => ({ ...old, [field]: value })))}
        />
      ))}
      {problem && !fields.includes(problem.field) && <p class="field-problem">{problemText(problem)}</p>}
      {result === null ? (
        <button type="button" class="go go-quiet" aria-disabled={!full} onClick={() => void work()}>
          {t("shop.work_it_out")}
        </button>
      ) : (
        <button type="button" class="go go-quiet" onClick={() => (onMeasured(result), setResult(null))}>
          {t("shop.use_it", { [found]: result, what: t(`shop.guide.${name}_found`, { [found]: result }) })}
        </button>
      )}
    </details>
  );
}
