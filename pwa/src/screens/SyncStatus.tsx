import { sync } from "../state";
import { t } from "../text";

/** Whether the server has everything of this phone. "Everything" is said only of the log that the last exchange was with. */
export function SyncStatus() {
  const { unsent, confirmed } = sync.value;
  if (unsent > 0) return <p>{t("desk.unsent", { n: unsent })}</p>;
  return <p>{t(confirmed ? "desk.all_sent" : "desk.none_waits")}</p>;
}
