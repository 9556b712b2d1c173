import { t } from "../text";

const DO = ["aid.cool", "aid.leave_sugar", "aid.rings", "aid.warm", "aid.cover"];
const DO_NOT = ["aid.no_ice", "aid.no_cream", "aid.no_pull", "aid.no_blister"];
const HELP = ["aid.help_size", "aid.help_place", "aid.help_deep"];

/** What to do for a burn, in order. Works without a network; the sources are named at the end. */
export function FirstAid() {
  return (
    <div class="aid">
      <ol>
        {DO.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ol>
      <h3>{t("aid.do_not")}</h3>
      <ul>
        {DO_NOT.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ul>
      <h3>{t("aid.get_help")}</h3>
      <ul>
        {HELP.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ul>
      <p class="aid-note">{t("aid.sources")}</p>
      <p class="aid-note">{t("aid.limits")}</p>
    </div>
  );
}
