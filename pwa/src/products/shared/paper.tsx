import type { ComponentChildren } from "preact";

import type { Input, SignalWord } from "../../documents";
import { shop } from "../../state";
import { fieldName, t } from "../../text";
import { shownValue } from "../../ui/BasisMark";
import { Paper } from "../../ui/Paper";
import { Section } from "../../ui/Card";

interface PageProps {
  title: string;
  /** Right of the title, a line each; empty ones are none. */
  lines: string[];
  onClose: () => void;
  /** Further buttons beside "print" and "back". */
  more?: ComponentChildren;
  children: ComponentChildren;
}

/** A printed page of a batch, with its head and foot. */
export function BatchPage({ title, lines, onClose, more, children }: PageProps) {
  return (
    <Paper title={title} onClose={onClose} more={more}>
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
      {children}
      <footer>{t("paper.foot")}</footer>
    </Paper>
  );
}

/** The cautions of setting up, and those of melting in an oven; the bench says each on its step. */
export const SETUP_CAUTIONS: [SignalWord, string][] = [
  ["WARNING", "caution.set_up"],
  ["WARNING", "caution.no_water"],
];
export const IN_OVEN: [SignalWord, string][] = [
  ["WARNING", "caution.mitts"],
  ["WARNING", "caution.no_metal"],
];

/** What may hurt somebody in a batch, the worst first, and what to do for a burn. */
export function CautionList({ cautions }: { cautions: [SignalWord, string][] }) {
  return (
    <ul class="cautions">
      {cautions.map(([word, code]) => (
        <li key={code}>
          <b>{t(`signal.${word.toLowerCase()}`)}</b> {t(code)}
        </li>
      ))}
      <li class="first-aid">
        <b>{t("button.first_aid")}:</b> {t("paper.first_aid")}
      </li>
    </ul>
  );
}

/** Every figure the plan rests on, by its basis: nothing of that is lost on paper, and it stays large enough to read. */
export function BasisList({ inputs }: { inputs: Input[] }) {
  const bases = [...new Set(inputs.map((one) => one.basis))];
  return (
    <Section title={t("desk.rests_on")}>
      <ul class="rests">
        {bases.map((basis) => (
          <li key={basis}>
            <b>{t(`basis.${basis}`)}:</b> <InputFigures inputs={inputs.filter((one) => one.basis === basis)} />
          </li>
        ))}
      </ul>
    </Section>
  );
}

function InputFigures({ inputs }: { inputs: Input[] }) {
  return (
    <>
      {inputs.map((one, index) => (
        <span key={one.field}>
          {fieldName(one.field)} <b>{shownValue(one)}</b>
          {index < inputs.length - 1 ? "; " : "."}
        </span>
      ))}
    </>
  );
}
