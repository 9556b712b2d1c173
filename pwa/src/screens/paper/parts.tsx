import type { Input, SignalWord } from "../../documents";
import { shop } from "../../state";
import { fieldName, t } from "../../text";
import { shownValue } from "../../ui/BasisMark";

/** What may hurt somebody in a batch of a slab, the worst first; the bench says each on its step. */
const CAUTIONS: [SignalWord, string][] = [
  ["WARNING", "caution.set_up"],
  ["WARNING", "caution.no_water"],
  ["WARNING", "caution.mitts"],
  ["WARNING", "caution.no_metal"],
  ["CAUTION", "caution.knife_cut"],
  ["NOTICE", "caution.milk"],
];

interface HeadProps {
  title: string;
  /** Right of the title, a line each. */
  lines: string[];
}

export function PaperHead({ title, lines }: HeadProps) {
  return (
    <header>
      <h1>{title}</h1>
      <p>
        {[shop.value?.name ?? "", ...lines].filter(Boolean).map((line) => (
          <span key={line}>
            {line}
            <br />
          </span>
        ))}
      </p>
    </header>
  );
}

export function Cautions() {
  return (
    <ul class="cautions">
      {CAUTIONS.map(([word, code]) => (
        <li key={code}>
          <b>{t(`signal.${word.toLowerCase()}`)}</b> {t(code)}
        </li>
      ))}
    </ul>
  );
}

/** Every figure the plan rests on, with its basis: nothing of that is lost on paper. */
export function Rests({ inputs }: { inputs: Input[] }) {
  return (
    <section>
      <h2>{t("desk.rests_on")}</h2>
      <ul class="rests">
        {inputs.map((one) => (
          <li key={one.field}>
            {fieldName(one.field)}: <b>{shownValue(one)}</b>, {t(`basis.${one.basis}`)}
          </li>
        ))}
      </ul>
    </section>
  );
}

export function PaperFoot() {
  return <footer>{t("paper.foot")}</footer>;
}
