import type { SignalWord } from "../../documents";
import { t } from "../../text";
import { Caution } from "../../ui/Caution";
import { Desk } from "../../ui/Desk";
import { FirstAid } from "../../ui/FirstAid";

const CAUTIONS: [SignalWord, string][] = [
  ["WARNING", "help.sticks"],
  ["WARNING", "help.gloves"],
  ["WARNING", "help.water_bowl"],
  ["WARNING", "help.mitts"],
  ["WARNING", "help.cold_water"],
  ["WARNING", "help.metal"],
  ["CAUTION", "help.infrared"],
  ["CAUTION", "help.funnel"],
  ["CAUTION", "help.knife"],
  ["NOTICE", "help.allergens"],
  ["NOTICE", "help.hands"],
  ["NOTICE", "help.condensation"],
];

/** First aid and the cautions, on the phone at all times. */
export function HelpScreen() {
  return (
    <Desk title={t("desk.place_help")} here="help">
      <section class="card aid-card" id="first-aid">
        <h2>{t("aid.title")}</h2>
        <FirstAid />
      </section>
      <section class="card">
        <h2>{t("help.cautions")}</h2>
        {CAUTIONS.map(([word, key]) => (
          <Caution key={key} word={word} text={t(key)} />
        ))}
      </section>
      <section class="card">
        <h2>{t("help.ringing")}</h2>
        <p>{t("help.ringing_visible")}</p>
        <p>{t("help.ringing_remedy")}</p>
      </section>
      <section class="card">
        <h2>{t("help.limits_title")}</h2>
        <p>{t("help.limits")}</p>
      </section>
    </Desk>
  );
}
