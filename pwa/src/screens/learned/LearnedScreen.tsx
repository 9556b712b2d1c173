import { lessons, measured, shop as shopSignal } from "../../state";
import { t } from "../../text";
import { Desk } from "../../ui/Desk";
import { Figures } from "./Figures";
import { LessonCard } from "./LessonCard";
import { Months } from "./Months";

/** What closed batches measured, and each of them, planned against happened. */
export function LearnedScreen() {
  const [found, batches, shop] = [measured.value, lessons.value, shopSignal.value];
  return (
    <Desk title={t("learned.title")} here="records">
      {batches && <p class="lead">{t(found ? "learned.lead" : "learned.nothing_yet")}</p>}
      {found && shop && <Figures measured={found} shop={shop} />}
      <Months />
      {batches && batches.length > 0 && <h2>{t("learned.batches")}</h2>}
      <ul class="cards lessons">
        {batches?.map((one) => (
          <li key={one.batch_id}>
            <LessonCard lesson={one} />
          </li>
        ))}
      </ul>
    </Desk>
  );
}
