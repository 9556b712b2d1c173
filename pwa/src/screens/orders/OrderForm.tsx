import { useState } from "preact/hooks";

import type { Order, OrderLine, ProblemDocument, Values, Warning } from "../../documents";
import { useKeptForm } from "../../products/shared/useKeptForm";
import { EngineProblem, problemAt } from "../../problems";
import { go } from "../../router";
import { checkOrder, keepHalfMade, midnightOf, newId, now, orders, shop, writeFact } from "../../state";
import { formatMoney, formatTime, locale, problemText, t } from "../../text";
import { CountField } from "../../ui/CountField";
import { QuantityField, SwitchField, WordsField } from "../../ui/fields";
import { MoneyField } from "../../ui/MoneyField";
import { lineWords, nameOf, whenWords } from "./orderWords";

interface Draft {
  customer: string;
  customer_id: string | null;
  /** Midnight of the day (ms), and hours of the day; null: not chosen. */
  day_ms: number | null;
  hour: number | null;
  lines: OrderLine[];
  /** As typed; null: what its boxes cost. */
  price_minor: number | null;
  note: string;
  repeats: "week" | null;
  counter: boolean;
}

const DAYS = 8;
const HOURS = [8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18];
const USUAL = [6, 12, 20, 40];
const HOUR_MS = 3_600_000;
const NOTHING: Draft = { customer: "", customer_id: null, day_ms: null, hour: null, lines: [], price_minor: null, note: "", repeats: null, counter: false };

/** Takes an order, or changes one: who, which day and hour, what. A form half made is kept. */
export function OrderForm({ order }: { order: Order | null }) {
  const [draft, setDraft] = useKeptForm<Draft>(order ? `order ${order.id}` : "order", () => (order ? draftOf(order) : NOTHING), false);
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const [warnings, setWarnings] = useState<Warning[]>([]);
  const [priceFault, setPriceFault] = useState(false);
  const change = (part: Partial<Draft>) => {
    setProblem(null);
    setWarnings([]);
    setDraft((old) => ({ ...old, ...part }));
  };
  const wanted_ms = draft.day_ms === null || draft.hour === null ? null : atHour(draft.day_ms, draft.hour);
  const ready = draft.lines.length > 0 && (draft.counter || wanted_ms !== null) && (draft.counter || draft.customer.trim() !== "");
  const keep = async () => {
    if (!ready || priceFault) return;
    const kind = order ? "changed" : "placed";
    const { day_ms: _day, hour: _hour, ...said } = draft;
    const body: Values = { ...said, price_minor: draft.price_minor ?? pricesOf(draft.lines), customer: draft.customer.trim(), wanted_ms: wanted_ms ?? now.value, currency: shop.value?.currency ?? "" };
    try {
      const checked = await checkOrder(order?.id ?? null, kind, body);
      if (checked.warnings.length > 0 && warnings.length === 0) return setWarnings(checked.warnings);
      const id = order?.id ?? newId();
      await writeFact("order", id, kind, body);
      keepHalfMade(order ? `order ${order.id}` : "order", null);
      go(order ? `/orders/${id}` : "/orders");
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setProblem(error.problem);
    }
  };
  return (
    <form class="trade-form" onSubmit={(event) => (event.preventDefault(), void keep())}>
      <Customer draft={draft} onChange={change} />
      {!draft.counter && <When draft={draft} onChange={change} />}
      <What draft={draft} onChange={change} />
      <details class="card">
        <summary>{t("orders.more")}</summary>
        <Loose draft={draft} onChange={change} />
        <MoneyField label={t("orders.price_all")} currency={shop.value?.currency ?? ""} minor={draft.price_minor ?? null} problem={problemAt(problem, "price_minor")} onMinor={(price_minor, fault) => (setPriceFault(fault !== null), change({ price_minor }))} />
        <WordsField label={t("orders.note")} value={draft.note} most={500} onValue={(note) => change({ note })} />
        <YesNo legend={t("orders.every_week")} value={draft.repeats === "week"} onValue={(yes) => change({ repeats: yes ? "week" : null })} />
        <YesNo legend={t("orders.for_counter")} value={draft.counter} onValue={(counter) => change({ counter })} />
      </details>
      <Price minor={draft.price_minor ?? pricesOf(draft.lines)} />
      {problem && <p class="card card-wrong" role="alert">{problemText(problem)}</p>}
      {warnings.map((one) => (
        <p class="warning-line" role="alert" key={one.code}>
          {t(`warning.${one.code}`, one.values as Values)}
        </p>
      ))}
      <button type="submit" class="go" aria-disabled={!ready || priceFault}>
        {t(warnings.length > 0 ? "orders.all_the_same" : order ? "orders.keep_change" : "orders.place")}
      </button>
      <a class="go go-quiet" href={order ? `/orders/${order.id}` : "/orders"}>
        {t("button.back")}
      </a>
    </form>
  );
}

type Part = { draft: Draft; onChange: (part: Partial<Draft>) => void };

/** Customers of the shop and those who ordered before; what one of them had last is one tap. */
function Customer({ draft, onChange }: Part) {
  const known = [...orders.value.values()].filter((one) => one.placed_ms !== null && !one.counter).sort((a, b) => (b.placed_ms ?? 0) - (a.placed_ms ?? 0));
  const rows = (shop.value?.customers ?? []).map((row) => ({ id: row.id as string | null, name: row.name ?? "", counter: row.counter ?? false }));
  const before = [...new Set(known.map((one) => one.customer))].filter((name) => name && !rows.some((row) => row.name === name)).map((name) => ({ id: null, name, counter: false }));
  const last = known.find((one) => one.customer === draft.customer.trim() && draft.customer.trim() !== "");
  return (
    <>
      <WordsField label={t("orders.customer")} value={draft.customer} most={80} onValue={(customer) => onChange({ customer, customer_id: rows.find((row) => row.name === customer)?.id ?? null })} />
      <div class="chips">
        {[...rows, ...before].slice(0, 8).map((one) => (
          <button type="button" class="chip" key={one.name} aria-pressed={draft.customer === one.name} onClick={() => onChange({ customer: one.name, customer_id: one.id, counter: one.counter })}>
            {one.name}
          </button>
        ))}
      </div>
      {last && last.wanted_ms !== null && draft.lines.length === 0 && (
        <button type="button" class="go go-quiet" onClick={() => onChange({ ...draftOf(last), day_ms: nextWeekday(last.wanted_ms!), note: "" })}>
          {t("orders.as_last_time", { what: last.lines.map(lineWords).join(", "), when: whenWords(last) })}
        </button>
      )}
    </>
  );
}

function When({ draft, onChange }: Part) {
  const today = midnightOf(now.value);
  const days = Array.from({ length: DAYS }, (_, nth) => midnightOf(today + nth * 24 * HOUR_MS + 12 * HOUR_MS));
  const shown = draft.day_ms !== null && !days.includes(draft.day_ms) ? [...days, draft.day_ms] : days;
  const name = new Intl.DateTimeFormat(locale(), { weekday: "short", day: "numeric" });
  return (
    <>
      <fieldset class="several">
        <legend>{t("orders.day")}</legend>
        {shown.map((day) => (
          <button type="button" class="chip" key={day} aria-pressed={draft.day_ms === day} onClick={() => onChange({ day_ms: day })}>
            {day === today ? t("orders.today") : name.format(day)}
          </button>
        ))}
      </fieldset>
      <fieldset class="several">
        <legend>{t("orders.hour")}</legend>
        {HOURS.map((hour) => (
          <button type="button" class="chip" key={hour} aria-pressed={draft.hour === hour} onClick={() => onChange({ hour })}>
            {formatTime(atHour(today, hour))}
          </button>
        ))}
      </fieldset>
    </>
  );
}

function What({ draft, onChange }: Part) {
  const boxes = shop.value?.boxes ?? [];
  const countOf = (id: string) => draft.lines.find((line) => line.box_id === id)?.count ?? 0;
  const set = (id: string, count: number) => {
    const others = draft.lines.filter((line) => line.box_id !== id);
    onChange({ lines: count > 0 ? [...others, { box_id: id, product_id: null, count, mass_kg: null }] : others });
  };
  const [open, setOpen] = useState<string | null>(null);
  return (
    <fieldset class="several">
      <legend>{t("orders.what")}</legend>
      {boxes.length === 0 && (
        <p class="field-note">
          {t("orders.no_boxes")} <a href="/shop/boxes/new">{t("shop.add.boxes")}</a>
        </p>
      )}
      {boxes.map((box) =>
        countOf(box.id) > 0 || open === box.id ? (
          <CountField key={box.id} label={nameOf({ box_id: box.id, product_id: null })} value={countOf(box.id)} least={0} most={100_000} usual={USUAL} onValue={(count) => set(box.id, count)} />
        ) : (
          <button type="button" class="chip" key={box.id} onClick={() => setOpen(box.id)}>
            {nameOf({ box_id: box.id, product_id: null })}
          </button>
        ),
      )}
    </fieldset>
  );
}

/** Pieces that are sold loose, each product by its weight. */
function Loose({ draft, onChange }: Part) {
  const massOf = (id: string) => draft.lines.find((line) => line.product_id === id)?.mass_kg ?? null;
  const [open, setOpen] = useState<string[]>(() => draft.lines.flatMap((line) => line.product_id ?? []));
  const set = (id: string, mass_kg: number | null) => {
    const others = draft.lines.filter((line) => line.product_id !== id);
    onChange({ lines: mass_kg ? [...others, { box_id: null, product_id: id, count: null, mass_kg }] : others });
  };
  return (
    <fieldset class="several">
      <legend>{t("orders.loose")}</legend>
      {(shop.value?.products ?? []).map(({ id, name }) =>
        open.includes(id) ? (
          <QuantityField key={id} label={name ?? ""} name="mass_kg" value={massOf(id)} problem={null} onValue={(mass_kg) => set(id, mass_kg)} />
        ) : (
          <button type="button" class="chip" key={id} onClick={() => setOpen([...open, id])}>
            {name}
          </button>
        ),
      )}
    </fieldset>
  );
}

/** What the boxes of some lines cost together; null: of one of them nobody has said. */
function pricesOf(lines: OrderLine[]): number | null {
  const prices = lines.map((line) => (shop.value?.boxes.find((box) => box.id === line.box_id)?.price_minor ?? null) as number | null);
  return lines.length === 0 || prices.includes(null) ? null : lines.reduce((sum, line, nth) => sum + (line.count ?? 0) * (prices[nth] ?? 0), 0);
}

function Price({ minor }: { minor: number | null }) {
  return minor === null ? null : <p class="answer">{t("orders.price", { price: formatMoney(minor, shop.value?.currency ?? "") })}</p>;
}

function YesNo({ legend, value, onValue }: { legend: string; value: boolean; onValue: (yes: boolean) => void }) {
  const options = ["true", "false"].map((one) => ({ value: one, label: t(one === "true" ? "basis.yes" : "basis.no") }));
  return <SwitchField legend={legend} value={String(value)} options={options} onValue={(one) => onValue(one === "true")} />;
}

function draftOf({ customer, customer_id, wanted_ms, lines, price_minor, note, repeats, counter }: Order): Draft {
  return { customer, customer_id, day_ms: wanted_ms === null ? null : midnightOf(wanted_ms), hour: wanted_ms === null ? null : new Date(wanted_ms).getHours(), lines, price_minor: price_minor === pricesOf(lines) ? null : price_minor, note, repeats, counter };
}

/** The hour of a day by the kitchen's clock, also where a day has 23 or 25. */
function atHour(day_ms: number, hour: number): number {
  return new Date(day_ms).setHours(hour, 0, 0, 0);
}

/** The next day of the same name, at its midnight. */
function nextWeekday(ms: number): number {
  const today = new Date(midnightOf(now.value));
  const ahead = (new Date(ms).getDay() - today.getDay() + 7) % 7 || 7;
  return today.setDate(today.getDate() + ahead);
}
