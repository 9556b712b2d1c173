import { t } from "../text";

export interface ComparedRow {
  what: string;
  planned: string;
  /** Where it was to be expected, under what was planned. */
  between?: string;
  happened: string;
}

/** Planned beside happened. */
export function ComparedTable({ rows }: { rows: ComparedRow[] }) {
  return (
    <table class="compared">
      <thead>
        <tr>
          <td />
          <th scope="col">{t("desk.planned")}</th>
          <th scope="col">{t("desk.happened")}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ what, planned, between, happened }) => (
          <tr key={what}>
            <th scope="row">{what}</th>
            <td>
              {planned}
              {between && <small>{between}</small>}
            </td>
            <td>{happened}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
