import { useEffect, useState } from "preact/hooks";

import type { Summary } from "../../documents";
import { lessons, loadTrade, lots, orders, packs, refreshSummaries, saveBatches, saveLog, summaries } from "../../state";
import type { Kind } from "../../products/kindTraits";
import { placeViewsOf } from "../../products/placeViews";
import { go } from "../../router";
import { formatDay, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { WordsField } from "../../ui/fields";
import { LongList } from "../../ui/LongList";
import { SaveButtons } from "../../ui/SaveButtons";
import { stepName } from "../../ui/Timeline";
import { ListFiles } from "../ListFiles";
import { Scan } from "../Scan";
import { LearnedLink } from "../learned/LearnedLink";
import { seek } from "../trace/seek";
import { known, nodeWords, WORDS } from "../trace/traceWords";

/** From here on a list is searched, not read. */
const FEW = 8;

export function BatchesScreen() {
  const [sought, setSought] = useState("");
  useEffect(() => void Promise.all([refreshSummaries(), loadTrade()]), []);
  const found = summaries.value.filter((one) => isFound(one, sought));
  return (
    <Desk title={t("desk.batches_title")} here="records">
      {(lessons.value ?? []).length > 0 && <LearnedLink />}
      {summaries.value.length === 0 && <p class="card">{t("desk.no_batches")}</p>}
      {(summaries.value.length > FEW || packs.value.size + lots.value.size + orders.value.size > 0) && <WordsField label={t("trace.seek")} value={sought} most={60} onValue={setSought} />}
      <Scan onFound={(code) => scannedTo(code.lot, setSought)} />
      <Found sought={sought} />
      {found.length === 0 && sought && seek(sought, known(), WORDS).length === 0 && <p class="card">{t("desk.none_found", { sought })}</p>}
      <LongList all={found} card={batchCard} />
      <SaveButtons files={{ "button.batches_csv": saveBatches, "button.log_json": saveLog }} />
      <ListFiles place="packs" />
    </Desk>
  );
}

function batchCard(one: Summary) {
  return (
    <li key={one.batch_id}>
      <a class="card batch-card" href={`/batches/${one.batch_id}`}>
        <b>{one.name}</b>
        <span>{formatDay(one.opened_at_ms)}</span>
        <span>{outcome(one)}</span>
        {one.label && one.label.may_contain.length > 0 && <span>{t("day.may_hold", { allergens: one.label.may_contain })}</span>}
      </a>
    </li>
  );
}

/** Boxes, lots and orders that are found, each with its way both ways; a batch has it on its record. */
function Found({ sought }: { sought: string }) {
  const found = seek(sought, { ...known(), batches: [] }, WORDS).slice(0, 30);
  return (
    <ul class="cards">
      {found.map((node) => (
        <li key={node}>
          <a class="card batch-card" href={`/trace/${node}`}>
            <b>{nodeWords(node)}</b>
            <span>{t(KINDS[node.split("/")[0]!]!)}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}

const KINDS: Record<string, string> = { lot: "trace.a_lot", pack: "trace.a_pack", order: "trace.an_order" };

/** A code of one lot or of one pack leads to its trace; else it is sought. */
function scannedTo(lot: string, seekWords: (words: string) => void): void {
  const same = [...[...packs.value.values()].filter((one) => one.code === lot).map((one) => `pack/${one.id}`), ...[...lots.value.values()].filter((one) => one.supplier_lot === lot).map((one) => `lot/${one.id}`)];
  if (same.length === 1) go(`/trace/${same[0]!}`);
  else seekWords(lot);
}

/** Whether every word sought stands in a batch's name or day. */
function isFound(one: Summary, sought: string): boolean {
  const told = `${one.name} ${one.label?.lot ?? ""} ${formatDay(one.opened_at_ms)}`.toLocaleLowerCase();
  return sought.toLocaleLowerCase().split(/\s+/).every((word) => told.includes(word));
}

function outcome(one: Summary): string {
  if (one.closed_at_ms === null) return t("desk.still_open", { step: stepName(one.step) });
  if (one.label?.thrown_away) return t("desk.thrown_away", { why: t(`why.${one.label.thrown_away}`) });
  const { outcome: own } = placeViewsOf(one.kind as Kind);
  if (own) return own(one);
  if (one.pieces === null || one.good_kg === null) return t("desk.closed_uncounted");
  return t("desk.closed_with", { n: one.pieces, caramel_kg: one.caramel_kg });
}
