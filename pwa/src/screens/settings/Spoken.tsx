import { useState } from "preact/hooks";

import { changeSettings, settings, speak, type Spoken as Outcome } from "../../state";
import { reader, t } from "../../text";
import { SwitchField } from "../../ui/fields";
import { Card } from "../../ui/Card";

/** Spoken prompts: off unless wanted, and to be tried before one relies on them. */
export function Spoken() {
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const say = async () => setOutcome(await speak(t("settings.spoken_try"), reader.value.language));
  return (
    <Card title={t("settings.spoken")}>
      <p>{t("settings.spoken_why")}</p>
      <SwitchField
        legend={t("settings.spoken_aloud")}
        value={settings.value.spoken ? "on" : "off"}
        options={(["off", "on"] as const).map((value) => ({ value, label: t(`settings.spoken_${value}`) }))}
        onValue={(value) => void changeSettings({ spoken: value === "on" })}
      />
      <div class="buttons">
        <button type="button" onClick={() => void say()}>
          {t("button.say_something")}
        </button>
      </div>
      {(outcome === "no_voice" || outcome === "missing") && <p role="alert">{t(`settings.spoken_${outcome}`)}</p>}
    </Card>
  );
}
