import { useState } from "preact/hooks";

import type { SoundName, Units } from "../../documents";
import { awake, changeSettings, editShop, exportUnsent, missingLanguage, offline, playSound, settings, shop, sync, syncNow, units } from "../../state";
import { formatTime, languages, t } from "../../text";
import { ServerStatus, SyncStatus } from "../SyncStatus";
import { isShopEmpty } from "../../products/shared/FirstShop";
import { Phones } from "./Phones";
import { Spoken } from "./Spoken";
import { ChoiceField, SwitchField } from "../../ui/fields";
import { Desk } from "../../ui/Desk";
import { Card } from "../../ui/Card";

const UNITS: { [K in keyof Units]: Units[K][] } = {
  temperature: ["°C", "°F"],
  mass: ["kg", "g", "lb", "oz"],
  length: ["mm", "cm", "m", "in"],
  power: ["W"],
};
const DIMENSIONS = ["temperature", "mass", "length"] as const;
const SOUNDS: SoundName[] = ["stir", "read", "ready", "too_hot"];

export function SettingsScreen() {
  return (
    <Desk title={t("desk.place_settings")} here="shop">
      <Card title={t("settings.reading")}>
        <ChoiceField
          label={t("settings.language")}
          value={settings.value.language}
          options={["", ...languages].map((one) => ({ value: one, label: t(one ? `language.${one}` : "settings.as_shop") }))}
          onValue={(language) => void changeSettings({ language })}
        />
        {missingLanguage.value && <p role="alert">{t("settings.language_missing", { language: t(`language.${missingLanguage.value}`) })}</p>}
        <UnitFields />
        <SwitchField
          legend={t("settings.theme")}
          value={settings.value.theme}
          options={(["auto", "light", "dark"] as const).map((value) => ({ value, label: t(`settings.theme_${value}`) }))}
          onValue={(theme) => void changeSettings({ theme: theme as "auto" | "light" | "dark" })}
        />
      </Card>
      <Sound />
      <Spoken />
      <Phones />
      <Keeping />
      <a class="row-link" href="/notices.txt" target="_blank">
        <b>{t("settings.licences")}</b>
        <span>{t("settings.licences_how")}</span>
      </a>
    </Desk>
  );
}

/** Of a phone alone; of the whole shop while nothing is set up, so that what it is asked for first has round figures. */
function UnitFields() {
  const { role } = sync.value;
  const forShop = shop.value !== null && isShopEmpty(shop.value) && settings.value.units === null && role !== "bench" && role !== "reader";
  const choose = (dimension: (typeof DIMENSIONS)[number], unit: string) =>
    forShop
      ? editShop([{ doc: "shop", field: `units.${dimension}`, value: unit, basis: "typed" }])
      : changeSettings({ units: { ...units.value, [dimension]: unit } as Units });
  return (
    <>
      {DIMENSIONS.map((dimension) => (
        <ChoiceField
          key={dimension}
          label={t(`settings.${dimension}`)}
          value={units.value[dimension]}
          options={UNITS[dimension].map((one) => ({ value: one, label: one }))}
          onValue={(unit) => void choose(dimension, unit)}
        />
      ))}
      {shop.value && settings.value.units !== null && <OwnUnits own={settings.value.units} ofShop={shop.value.units} />}
    </>
  );
}

/** Units that this phone alone has: as the shop's again, or the shop's as these. */
function OwnUnits({ own, ofShop }: { own: Units; ofShop: Units }) {
  const asShop = () => changeSettings({ units: null });
  const forAll = async () => {
    await editShop(DIMENSIONS.map((one) => ({ doc: "shop", field: `units.${one}`, value: own[one], basis: "typed" as const })));
    await asShop();
  };
  return (
    <>
      <p class="quiet">{t("settings.units_here", { units: DIMENSIONS.map((one) => ofShop[one]).join(", ") })}</p>
      <div class="buttons">
        <button type="button" onClick={() => void asShop()}>
          {t("settings.units_as_shop")}
        </button>
        <button type="button" onClick={() => void forAll()}>
          {t("settings.units_for_all")}
        </button>
      </div>
    </>
  );
}

/** A muted phone is a burnt batch: try every sound, and say that it was heard. */
function Sound() {
  const heard = settings.value.heard_at_ms;
  const [silent, setSilent] = useState(false);
  const say = (heard_at_ms: number | null) => {
    setSilent(heard_at_ms === null);
    void changeSettings({ heard_at_ms });
  };
  return (
    <Card title={t("settings.sound")}>
      <p>{t("settings.sound_why")}</p>
      <div class="buttons">
        {SOUNDS.map((name) => (
          <button key={name} type="button" onClick={() => playSound(name)}>
            {t(`settings.sound_${name}`)}
          </button>
        ))}
      </div>
      <button type="button" class="go go-quiet" onClick={() => say(Date.now())}>
        {t("button.heard_it")}
      </button>
      <button type="button" class="go go-quiet" onClick={() => say(null)}>
        {t("button.not_heard")}
      </button>
      {silent && <p role="alert">{t("screen.not_heard")}</p>}
      <p class="quiet">{heard === null ? t("settings.not_heard") : t("settings.heard", { time: formatTime(heard) })}</p>
      <p>{t(`settings.awake_${awake.value}`)}</p>
    </Card>
  );
}

function Keeping() {
  const { persistent, lastAt } = sync.value;
  const kept = persistent === null ? "unknown" : persistent ? "yes" : "no";
  return (
    <Card title={t("settings.keeping")}>
      <p>{t(`desk.offline_${offline.value}`)}</p>
      <p>{t(`settings.persistent_${kept}`)}</p>
      <ServerStatus />
      <SyncStatus />
      {lastAt !== null && <p class="quiet">{t("settings.last_exchange", { time: formatTime(lastAt) })}</p>}
      <div class="buttons">
        <button type="button" onClick={() => void syncNow()}>
          {t("button.send_now")}
        </button>
        <button type="button" onClick={() => void exportUnsent()}>
          {t("button.save_unsent")}
        </button>
      </div>
    </Card>
  );
}
