import type { ComponentChildren } from "preact";

import type { Input } from "../documents";
import { fieldName, hasText, t } from "../text";
import { basisWord, shownValue } from "./BasisMark";
import { Card } from "./Card";

/** A card of every input of an answer: value, basis, and for an assumed one how to measure it. */
export function BasisTable({ inputs, children }: { inputs: Input[]; children?: ComponentChildren }) {
  const assumed = inputs.filter((one) => one.basis === "assumed").length;
  return (
    <Card title={t("desk.rests_on")}>
      <details class="basis-table">
        <summary>{t("basis.summary", { n: inputs.length, assumed })}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{t("basis.column_what")}</th>
              <th scope="col">{t("basis.column_value")}</th>
              <th scope="col">{t("basis.column_basis")}</th>
            </tr>
          </thead>
          <tbody>
            {inputs.map((one) => (
              <tr key={one.field}>
                <th scope="row">{fieldName(one.field)}</th>
                <td>{shownValue(one)}</td>
                <td>
                  <b>{basisWord(one)}</b>
                  {one.source && hasText(`source.${one.source}`) && <small>{t(`source.${one.source}`)}</small>}
                  {one.measure_by && hasText(`measure.${one.measure_by}`) && <small>{t(`measure.${one.measure_by}`)}</small>}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
      {children}
    </Card>
  );
}
