import type { Input, ProductRow, SlabPlanReply } from "../../documents";
import { formatNumber, formatSides, t } from "../../text";
import { go } from "../../router";
import { BasisMarks } from "./Sentences";
import { formPrefill } from "./formPrefill";

export type Dip = NonNullable<SlabPlanReply["dip"]>;

/** Goes on to the bowl of chocolate that these pieces want. */
export function PlanChocolateButton({ product, dip }: { product: ProductRow | undefined; dip: Dip | null | undefined }) {
  if (!dip) return null;
  const plan = () => {
    formPrefill.bowl = { chocolate_id: product?.chocolate_id ?? null, kg: dip.total_kg };
    go("/plan/chocolate");
  };
  return (
    <button type="button" class="go go-quiet" onClick={plan}>
      {t("button.plan_bowl")}
    </button>
  );
}

/** What dipping takes, in words: chocolate, the finished piece, salt. */
export function DipSentences({ dip, inputs }: { dip: Dip; inputs: Input[] }) {
  return (
    <>
      <p class="answer">{t(dip.prebottom_kg > 0 ? "desk.dip_total_prebottom" : "desk.dip_total", { ...dip })}</p>
      <BasisMarks inputs={inputs} fields={["dip.pickup", "dip.thickness_m.side", "coating.thickness_m", "dip.bowl_reserve_kg", "dip.bowl_width_m", "dip.drip_share"]} />
      {dip.depth_m !== null && <p>{t("desk.dip_depth", { depth_m: dip.depth_m, reserve_kg: dip.reserve_kg })}</p>}
      {dip.rewarms > 0 && dip.holds_s !== null && <p>{t("desk.dip_rewarm", { dip_all_s: dip.dip_all_s, holds_s: dip.holds_s, n: dip.rewarms })}</p>}
      <p class="answer">
        {t(dip.outside_m ? "desk.dip_piece" : "desk.dip_cluster", { size: sizeOf(dip), piece_kg: dip.piece_kg, percent: formatNumber(100 * dip.share, 0) })}
      </p>
      {dip.salt_kg !== null && <p class="answer">{t("desk.dip_salt", { salt: dip.salt ?? t("desk.dip_any_salt"), each_kg: dip.salt_each_kg, salt_kg: dip.salt_kg })}</p>}
      {(dip.salt_kg !== null || dip.top_mark) && <p>{t("desk.dip_every", { n: dip.every })}</p>}
      {(dip.salt_kg !== null || dip.top_mark) && <BasisMarks inputs={inputs} fields={["dip.dip_s", "dip.set_s"]} />}
    </>
  );
}

function sizeOf({ outside_m }: Dip): string {
  return outside_m ? formatSides(outside_m.length_m, outside_m.width_m, outside_m.height_m) : "";
}
