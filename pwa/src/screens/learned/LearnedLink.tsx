import { t } from "../../text";

export function LearnedLink() {
  return (
    <a class="row-link no-print" href="/learned">
      <b>{t("learned.title")}</b>
      <span>{t("learned.in_short")}</span>
    </a>
  );
}
