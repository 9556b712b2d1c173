import { useState } from "preact/hooks";

import type { LotLeft, PlanDocument, Run, Values } from "../../documents";
import { traitsOf } from "../../products/traitRegistry";
import { batches, checkLot, isBowlInUse, loadTrade, lots, newId, shop, stockOverview, writeFact } from "../../state";
import { formatDayOf, t } from "../../text";
import { BenchBar } from "../../ui/BenchBar";
import { BigButton } from "../../ui/BigButton";
import { Caution } from "../../ui/Caution";
import type { Typing } from "../../ui/typing";
import { amountWords, lotTitle } from "../stock/stockWords";
import type { BenchProps, Sheet } from "../bench/benchProps";
import { undoOf } from "../bench/undoOf";

/** A fact that may be told with lots. */
type Taking = Pick<Typing, "kind" | "body">;

/** Facts that are told of what somebody has in hand: it comes from a lot. */
const TAKING = ["weighed", "old_weighed", "under_lot_named", "dipping_started"];

/** What is left of every lot, oldest best by first. */
export async function lotsLeft(): Promise<LotLeft[]> {
  await loadTrade();
  if (lots.value.size === 0) return [];
  return (await stockOverview()).lots.filter((row) => row.is_open && row.left > 0);
}

/** The lots that may go into what a step asks for; those whose day is over come last. */
export function lotsFor(left: LotLeft[], plan: PlanDocument, run: Run, entry: Taking): LotLeft[] {
  const fit = fitting(left, plan, run, entry);
  return [...fit.filter((row) => !row.is_past), ...fit.filter((row) => row.is_past)];
}

function fitting(left: LotLeft[], plan: PlanDocument, run: Run, entry: Taking): LotLeft[] {
  if (!TAKING.includes(entry.kind)) return [];
  const materials = materialsOf(plan, entry);
  const found = left.filter(({ material }) => materials.includes(material));
  if (entry.kind === "under_lot_named" || entry.kind === "dipping_started") return found;
  const isOld = ({ lot_id }: LotLeft) => lots.value.get(lot_id)?.made_from != null;
  if (entry.kind === "old_weighed") return found.filter(isOld);
  return run.remelt?.old_kg ? found.filter((row) => !isOld(row)) : found;
}

/** What of the shop's materials it is: the caramel, the chocolate, the salt, or what lies under by its name. */
function materialsOf(plan: PlanDocument, entry: Taking): string[] {
  if (entry.kind === "dipping_started") {
    const salts = saltOf(plan) > 0 ? (shop.value?.materials ?? []).filter(({ what }) => what === "salt") : [];
    const chocolate = shop.value?.products.find(({ id }) => id === plan.product_id)?.chocolate_id;
    // A bowl of chocolate that is a batch of its own took its chocolate of the lots already.
    const isOfBowl = [...batches.value.values()].some(isBowlInUse);
    return [...(chocolate && coatOf(plan) > 0 && !isOfBowl ? [`chocolates/${chocolate}`] : []), ...salts.map(({ id }) => `materials/${id}`)];
  }
  if (entry.kind === "under_lot_named") {
    const under = (shop.value?.materials ?? []).filter(({ what }) => what === "under");
    const named = under.filter(({ id, name }) => [id, name].includes(entry.body.material as string));
    return (named.length > 0 ? named : under).map(({ id }) => `materials/${id}`);
  }
  const kept = mainMaterial(plan);
  return kept === null ? [] : [kept];
}

function mainMaterial(plan: PlanDocument): string | null {
  if (traitsOf(plan.kind).lendsChocolate) return plan.chocolate_id ? `chocolates/${plan.chocolate_id}` : null;
  return plan.caramel_id ? `caramels/${plan.caramel_id}` : null;
}

/** The body of a fact with the lots it was taken of: each as far as it goes, the last one the rest. What was typed of the
 * lot stays; where nothing was, the makers' numbers stand there. */
export function withLots(kind: string, body: Values, run: Run, taken: LotLeft[], planned: (material: string) => number): Values {
  const old_kg = kind === "weighed" ? (run.remelt?.weighed_kg ?? 0) : 0;
  // Into the dip go chocolate and salt, each as much as is planned of it; everywhere else one stands for the other.
  const kindOf = ({ material }: LotLeft) => (kind === "dipping_started" ? material : "");
  const last = new Map(taken.map((row) => [kindOf(row), row.lot_id]));
  const rests = new Map<string, number>();
  const parts = taken.map((row) => {
    const rest = rests.get(kindOf(row)) ?? (typeof body.kg === "number" ? body.kg : planned(row.material)) - old_kg;
    const amount = last.get(kindOf(row)) === row.lot_id ? rest : Math.min(rest, row.left);
    rests.set(kindOf(row), rest - amount);
    return { lot_id: row.lot_id, amount };
  });
  const numbers = new Set(taken.flatMap(({ lot_id }) => lots.value.get(lot_id)?.supplier_lot || []));
  const named = [...numbers].join(", ").slice(0, 60);
  const written = { ...body, lots: parts.filter(({ amount }) => amount > 0) };
  return kind === "old_weighed" || kind === "dipping_started" || body.lot ? written : { ...written, lot: named || null };
}

/** The salt that a plan puts on all pieces (kg). */
function saltOf(plan: PlanDocument): number {
  return (plan.reply as { dip?: { salt_kg: number | null } | null }).dip?.salt_kg ?? 0;
}

/** The chocolate that goes on all pieces, what drips off with it (kg). */
function coatOf(plan: PlanDocument): number {
  const dip = (plan.reply as { dip?: Partial<Record<"coating_kg" | "prebottom_kg" | "drip_kg", number>> | null }).dip;
  return (dip?.coating_kg ?? 0) + (dip?.prebottom_kg ?? 0) + (dip?.drip_kg ?? 0);
}

/** What of a material a step without a weighing takes, in its unit. */
export function plannedOf(plan: PlanDocument, entry: Taking, material: string): number {
  if (entry.kind === "dipping_started") return material.startsWith("chocolates/") ? coatOf(plan) : saltOf(plan);
  if (entry.kind !== "under_lot_named" || !("under" in plan.reply)) return 0;
  return plan.reply.under[entry.body.seen as number]?.kg ?? 0;
}

/** What was weighed back and is not a lot yet, as the lot it would be; null: nothing, or the shop keeps no lots. */
export function restOf(batch_id: string, plan: PlanDocument, run: Run): Values | null {
  const material = mainMaterial(plan);
  const amount = run.out.filter(({ what }) => what === "rest").at(-1)?.kg ?? 0;
  const all = [...lots.value.values()];
  if (material === null || amount <= 0 || all.length === 0 || all.some(({ made_from }) => made_from === batch_id)) return null;
  const days = (run.uses ?? []).flatMap(({ lot_id }) => lots.value.get(lot_id)?.best_by ?? []).sort();
  return { material, unit: "kg", batch_id, amount, remelts: run.remelt?.n ?? 0, best_by: days[0] ?? null };
}

/** Keeps it as a lot, once the engine has looked at it. */
export async function keepRest(body: Values): Promise<void> {
  const id = newId();
  await checkLot(id, "made", body);
  await writeFact("lot", id, "made", body);
}

interface PageProps extends BenchProps {
  offered: LotLeft[];
  onTaken: (taken: LotLeft[]) => void;
  onSheet: (sheet: Sheet) => void;
}

/** The lots that are there, oldest best by first: one or several go in. */
export function LotsPage(props: PageProps) {
  const { advice, offered, armed, onTaken, onSheet } = props;
  const [taken, setTaken] = useState<string[]>([]);
  const toggle = (id: string) => setTaken((old) => (old.includes(id) ? old.filter((one) => one !== id) : [...old, id]));
  return (
    <main class="bench bench-lots" data-step={advice.step} data-pending={props.pending}>
      <BenchBar {...undoOf(props)} onAid={() => onSheet("aid")} onMore={() => onSheet("more")} />
      <h1 class="say" aria-live="polite">
        {t("screen.which_lots")}
      </h1>
      <div class="lots">
        {offered.map((row) => (
          <LotButton key={row.lot_id} row={row} isTaken={taken.includes(row.lot_id)} onTap={() => toggle(row.lot_id)} />
        ))}
      </div>
      {advice.caution && <Caution {...advice.caution} />}
      <BigButton tone={taken.length ? "now" : "quiet"} armed={armed} label={t(taken.length ? "button.take_these" : "button.none_of_these")} onTap={() => onTaken(offered.filter(({ lot_id }) => taken.includes(lot_id)))} />
    </main>
  );
}

function LotButton({ row, isTaken, onTap }: { row: LotLeft; isTaken: boolean; onTap: () => void }) {
  const lot = lots.value.get(row.lot_id);
  return (
    <button type="button" class="side" aria-pressed={isTaken} onClick={onTap}>
      {lot && lotTitle(lot)}
      <small>
        {t("stock.left", { left: amountWords(row.left, row.unit) })}
        {row.best_by && `, ${t("stock.best_by", { day: formatDayOf(row.best_by) })}`}
        {row.is_past && <strong> {t("stock.past")}</strong>}
      </small>
    </button>
  );
}
