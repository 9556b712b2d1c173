import { sync } from "../state";
import { t } from "../text";

/** Whether the server answers, or what it says is wrong; of one that does not know this phone, nothing. */
export function ServerStatus() {
  const { reachable, role, trouble } = sync.value;
  if (trouble) return <p class="warning-line">{trouble}</p>;
  if (role === "none") return null;
  return <p>{t(reachable === null ? "desk.server_unknown" : reachable ? "desk.server_here" : "desk.server_away")}</p>;
}

/** Whether the server has everything of this phone. "Everything" is said only of the log that the last exchange was with. */
export function SyncStatus() {
  const { unsent, confirmed } = sync.value;
  if (unsent > 0) return <p>{t("desk.unsent", { n: unsent })}</p>;
  return <p>{t(confirmed ? "desk.all_sent" : "desk.none_waits")}</p>;
}
