import type { SignalWord } from "../../documents";
import { t } from "../../text";
import { Caution } from "../../ui/Caution";
import { Desk } from "../../ui/Desk";
import { FirstAid } from "../../ui/FirstAid";
import { Card } from "../../ui/Card";

const CAUTIONS: [SignalWord, string][] = [
  ["WARNING", "help.sticks"],
  ["WARNING", "help.gloves"],
  ["WARNING", "help.water_bowl"],
  ["WARNING", "help.mitts"],
  ["WARNING", "help.cold_water"],
  ["WARNING", "help.metal"],
  ["WARNING", "caution.superheated"],
  ["WARNING", "help.warming"],
  ["WARNING", "help.allergens"],
  ["WARNING", "help.hands"],
  ["CAUTION", "help.floor"],
  ["CAUTION", "help.infrared"],
  ["CAUTION", "help.funnel"],
  ["CAUTION", "help.knife"],
  ["NOTICE", "help.condensation"],
  ["NOTICE", "help.shelf_life"],
];

/** First aid and the cautions, on the phone at all times. */
export function HelpScreen() {
  return (
    <Desk title={t("desk.place_help")} here="shop">
      <section class="card aid-card" id="first-aid">
        <h2>{t("aid.title")}</h2>
        <FirstAid />
        <p class="aid-note">{t("aid.sources")}</p>
        <p class="aid-note">{t("aid.limits")}</p>
      </section>
      <Card title={t("help.cautions")}>
        {CAUTIONS.map(([word, key]) => (
          <Caution key={key} word={word} code={key} />
        ))}
      </Card>
      <Card title={t("help.ringing")}>
        <p>{t("help.ringing_visible")}</p>
        <p>{t("help.ringing_remedy")}</p>
      </Card>
      <Card title={t("help.limits_title")}>
        <p>{t("help.limits")}</p>
      </Card>
    </Desk>
  );
}
