import { useEffect, useState } from "preact/hooks";

import type { NetCheckReply, Pack, Values, Warning } from "../../documents";
import { EngineProblem } from "../../problems";
import { checkNet, checkPack, shop, writeFact } from "../../state";
import { format, problemText, t } from "../../text";
import { QuantityField } from "../../ui/fields";
import { netOf } from "./netOf";
import { boxOf } from "./packWords";

/** Boxes on the scale: what they say of all of them, by the rule of the shop. */
export function NetCheck({ pack }: { pack: Pack }) {
  const box = boxOf(pack.box_id);
  const known = shop.value?.rule ?? null;
  const [rule, setRule] = useState<"us" | "eu" | null>(known === "uk" ? "eu" : known);
  const [division_kg, setDivision] = useState<number | null>(null);
  const [judged, setJudged] = useState<NetCheckReply | null>(null);
  const label_kg = box?.label_kg ?? null;
  useEffect(() => {
    if (label_kg !== null && rule !== null) checkNet(pack, label_kg, rule, division_kg).then(setJudged, (error: unknown) => console.error("net:", error));
  }, [pack, label_kg, rule, division_kg]);
  return (
    <section class="card">
      <h2>{t("pack.net_title")}</h2>
      {label_kg === null ? (
        <p>{t("pack.no_label")}</p>
      ) : (
        <>
          <p>{t("pack.net_label", { label_kg })}</p>
          <fieldset class="several">
            <legend>{t("pack.rule")}</legend>
            {(["us", "eu"] as const).map((one) => (
              <button type="button" class="chip" key={one} aria-pressed={one === rule} onClick={() => setRule(one)}>
                {t(`pack.rule_${one}`)}
              </button>
            ))}
          </fieldset>
          <p class="quiet">{t(known === null ? "pack.rule_here" : "pack.rule_of_shop")}</p>
          <Weighing pack={pack} label_kg={label_kg} tare_kg={box?.tare_kg ?? null} />
          {judged && rule && <Verdict pack={pack} judged={judged} />}
          <details>
            <summary>{t("pack.scale")}</summary>
            <QuantityField label={t("pack.division")} name="division_kg" value={division_kg} problem={null} onValue={setDivision} />
            {judged && <p>{t(judged.scale_fits === false ? "pack.scale_too_coarse" : judged.scale_fits ? "pack.scale_fits" : "pack.scale_wanted", { division_kg: judged.division_wanted_kg })}</p>}
          </details>
          <p class="quiet">{t("pack.guide_only")}</p>
        </>
      )}
    </section>
  );
}

const VERDICT = { open: "pack.verdict_open", pass: "pack.verdict_pass", fail: "pack.verdict_fail" };

function Verdict({ pack, judged }: { pack: Pack; judged: NetCheckReply }) {
  const tenth = Math.max(1, Math.ceil(pack.packed / 10));
  return (
    <>
      <p>{t("pack.to_weigh", { n: pack.net_kg.length, wanted: judged.wanted, packed: pack.packed, tenth })}</p>
      {judged.mean_error_kg !== null && <p>{t(judged.mean_error_kg < 0 ? "pack.mean_below" : "pack.mean_above", { kg: Math.abs(judged.mean_error_kg) })}</p>}
      {judged.mean_limit_kg !== null && <p>{t("pack.mean_limit", { kg: judged.mean_limit_kg })}</p>}
      <p>{t("pack.short", { n: judged.short, allowed: judged.short_allowed, kg: judged.most_short_kg })}</p>
      <p class={judged.verdict === "fail" ? "card card-wrong" : "answer"} role="status">
        {t(VERDICT[judged.verdict])}
      </p>
    </>
  );
}

/** One box after the other; a weight far from the label is asked again. */
function Weighing({ pack, label_kg, tare_kg }: { pack: Pack; label_kg: number; tare_kg: number | null }) {
  const [withBox, setWithBox] = useState(tare_kg !== null);
  const [scale_kg, setScale] = useState<number | null>(null);
  const [nth, setNth] = useState(0);
  const [said, setSaid] = useState<string | null>(null);
  const [asked, setAsked] = useState<Warning[]>([]);
  const keep = async () => {
    if (scale_kg === null) return;
    try {
      const body: Values = { net_kg: netOf(scale_kg, tare_kg, withBox) };
      const checked = await checkPack(pack, "net_weighed", body, label_kg);
      if (checked.warnings.length > 0 && asked.length === 0) return setAsked(checked.warnings);
      // The field is free before the fact is written: the next box may lie on the scale already.
      setAsked([]);
      setScale(null);
      setNth(nth + 1);
      await writeFact("pack", pack.id, "net_weighed", checked.body);
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setSaid(problemText(error.problem));
    }
  };
  return (
    <form onSubmit={(event) => (event.preventDefault(), void keep())}>
      {tare_kg !== null && (
        <button type="button" class="chip" aria-pressed={withBox} onClick={() => (setWithBox(!withBox), setAsked([]))}>
          {t("pack.with_box", { tare_kg })}
        </button>
      )}
      <QuantityField key={nth} label={t(withBox ? "pack.on_scale" : "pack.net")} name="net_kg" value={scale_kg} problem={null} onValue={(value) => (setScale(value), setSaid(null), setAsked([]))} />
      {said && <p class="card card-wrong" role="alert">{said}</p>}
      {asked.map((one) => (
        <p class="warning-line" role="alert" key={one.code}>
          {t(`warning.${one.code}`, one.values as Values)}
        </p>
      ))}
      <button type="submit" class="go" aria-disabled={scale_kg === null}>
        {t(asked.length > 0 ? "orders.all_the_same" : "pack.net_keep")}
      </button>
      {pack.net_kg.length > 0 && <p class="quiet">{pack.net_kg.slice(-12).map((kg) => format("net_kg", kg)).join(" · ")}</p>}
    </form>
  );
}
