import type { ShopEdit, StandState, StandupPlan } from "../../documents";
import { editShop, shop, stiffnessOf } from "../../state";
import { format, formatDuration, t } from "../../text";
import type { RecordOf } from "../kindViews";
import { Card } from "../../ui/Card";

/** A stand-up test: the heights of its cube, the verdict, and where that is kept. */
export function StandupCard({ record: { plan, run } }: { record: RecordOf<"standup"> }) {
  if (!run.stand) return null;
  const { heights } = run.stand;
  const since = (at_ms: number) => formatDuration((at_ms - (heights[0]?.at_ms ?? at_ms)) / 1000);
  return (
    <Card title={t("desk.stand_title")}>
      <p class="answer">{verdictWords(run.stand)}</p>
      <ol class="plain">
        {heights.map((one, index) => (
          <li key={one.at_ms}>
            {index === 0 ? t("desk.stand_fresh", { height_m: one.height_m }) : t("desk.stand_height", { height: format("height_m", one.height_m), since: since(one.at_ms) })}
          </li>
        ))}
      </ol>
      {run.closed_at_ms !== null && <KeepVerdict plan={plan} stand={run.stand} />}
    </Card>
  );
}

function verdictWords({ verdict, lost_fraction }: StandState): string {
  if (verdict === null || lost_fraction === null) return t("desk.stand_untold");
  return t("desk.stand_verdict", { verdict: t(`firmness.${verdict}`), lost: format("lost_share", lost_fraction) });
}

/** Writes the verdict and the stiffness it comes from to its caramel, as measured. */
function KeepVerdict({ plan, stand: { verdict, heights } }: { plan: StandupPlan; stand: StandState }) {
  const caramel = shop.value?.caramels.find((one) => one.id === plan.caramel_id);
  if (!caramel || verdict === null) return null;
  const { name, id, firmness, material } = caramel;
  const kept = firmness === verdict && shop.value?.basis[`caramels/${id}.firmness`] === "measured";
  if (kept) return <p class="quiet">{t("desk.stand_kept", { name })}</p>;
  const keep = async () => {
    const measured = heights.map(({ at_ms, height_m }) => ({ at_s: (at_ms - (heights[0]?.at_ms ?? at_ms)) / 1000, height_m }));
    const stiffer_k = await stiffnessOf({ heights: measured, room_c: plan.reply.room_c, material });
    const edit = (field: string, value: unknown): ShopEdit => ({ doc: `caramels/${id}`, field, value, basis: "measured" });
    await editShop([edit("firmness", verdict), edit("stiffer_k", stiffer_k)]);
  };
  return (
    <button type="button" class="go" onClick={() => void keep()}>
      {t("desk.stand_keep", { name, verdict: t(`firmness.${verdict}`) })}
    </button>
  );
}
