import { useEffect, useState } from "preact/hooks";

import type { PackBoxesReply } from "../../documents";
import { type BatchRecord, boxesOf, countedOf, loadTrade, packs } from "../../state";
import { t } from "../../text";
import { Card } from "../../ui/Card";
import { boxName, packTitle } from "./packWords";

/** What of a batch is in boxes, and what its other good pieces would fill. */
export function PackedCard({ record }: { record: BatchRecord }) {
  const { plan, run, summary } = record;
  const first = countedOf(summary.batch_id, plan, run);
  const [filled, setFilled] = useState<PackBoxesReply | null>(null);
  useEffect(() => {
    if (!first) return;
    const wanted = { box_id: null, count: null, seconds: false };
    loadTrade().then(() => boxesOf(first, wanted)).then(setFilled, (error: unknown) => console.error("boxes:", error));
  }, [packs.value, first?.good]);
  if (!first || !filled) return null;
  const left = filled.left.find((one) => one.batch_id === first.batch_id)?.pieces ?? 0;
  const mine = [...packs.value.values()].filter((pack) => pack.from.some((one) => one.batch_id === first.batch_id));
  return (
    <Card title={t("pack.title")}>
      <FilledLine good={left} filled={filled} />
      {left < 0 && (
        <p class="card-wrong card" role="alert">
          {t("pack.more_than_counted", { n: -left })}
        </p>
      )}
      <ul class="plain">
        {mine.map((pack) => (
          <li key={pack.id}>
            <a href={`/packs/${pack.id}`}>{packTitle(pack)}</a>
          </li>
        ))}
      </ul>
      <a class="go no-print" href={`/batches/${first.batch_id}/pack`}>
        {t("pack.begin")}
      </a>
      <a class="go go-quiet no-print" href={`/trace/batch/${first.batch_id}`}>
        {t("trace.both_ways")}
      </a>
    </Card>
  );
}

/** "174 good: 19 × Box of 9 and 3 loose". */
export function FilledLine({ good, filled, box_id }: { good: number; filled: PackBoxesReply; box_id?: string | null }) {
  const row = filled.boxes.find((one) => one.box_id === box_id) ?? filled.boxes[0];
  if (!row) return <p>{t("pack.good", { good: Math.max(0, good) })}</p>;
  return <p class="answer">{t("pack.fills", { good: Math.max(0, good), count: row.count, box: boxName(row.box_id), loose: row.loose })}</p>;
}
