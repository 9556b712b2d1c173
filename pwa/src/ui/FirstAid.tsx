import { t } from "../text";

const DO = ["aid.cool", "aid.bowl", "aid.leave_sugar", "aid.rings", "aid.eye", "aid.warm", "aid.cover"];
const DO_NOT = ["aid.no_ice", "aid.no_cream", "aid.no_pull", "aid.no_blister"];
const CALL = ["aid.call_breath", "aid.call_mouth", "aid.call_shock", "aid.call_current"];
const HELP = ["aid.help_size", "aid.help_place", "aid.help_deep"];

/** What to do for a burn, in order. Works without a network; who says so stands on Help, not before somebody who is burnt. */
export function FirstAid() {
  return (
    <div class="aid">
      <p class="aid-number">{t("aid.number")}</p>
      <ol>
        {DO.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ol>
      <Points title="aid.call" keys={CALL} />
      <Points title="aid.do_not" keys={DO_NOT} />
      <Points title="aid.get_help" keys={HELP} />
    </div>
  );
}

function Points({ title, keys }: { title: string; keys: string[] }) {
  return (
    <>
      <h3>{t(title)}</h3>
      <ul>
        {keys.map((key) => (
          <li key={key}>{t(key)}</li>
        ))}
      </ul>
    </>
  );
}
