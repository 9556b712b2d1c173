import type { ProblemDocument, Shop, ShopList, Values } from "../../documents";
import { format, formatTime, hasText, t } from "../../text";
import { Contents } from "./Contents";
import { MoneyField } from "../../ui/MoneyField";
import { ChoiceField, QuantityField, SeveralField, SwitchField, WordsField } from "../../ui/fields";
import type { FormField } from "../../products/shared/rowFields";
import { type Draft, keyOf, valueOf } from "../../products/shared/rowForms";

interface Props {
  list: ShopList | "shop";
  field: FormField;
  shop: Shop;
  row: Values;
  draft: Draft;
  /** What the value in the shop rests on. */
  basis: string | undefined;
  /** What is wrong with this field. */
  problem: ProblemDocument | null;
  onValue: (field: string, value: unknown) => void;
  onParseState: (field: string, fault: boolean) => void;
}

/** One field of a row, drawn by its kind, with what it is for and how to measure it. */
export function RowField(props: Props) {
  const { list, field, row, draft, shop, onValue } = props;
  const { field: name } = field;
  const value = name in draft.values ? draft.values[name] : valueOf(row, name);
  const label = t(`shop.${keyOf(list, name)}`);
  const take = (next: unknown) => onValue(name, next);
  switch (field.kind) {
    case "words":
      return <WordsField label={label} value={String(value ?? "")} most={field.most} onValue={take} />;
    case "quantity":
      return <Quantity {...props} label={label} value={value as number | null} />;
    case "yes_no":
      return (
        <SwitchField
          legend={label}
          value={String(value)}
          options={["true", "false"].map((one) => ({ value: one, label: t(one === "true" ? "basis.yes" : "basis.no") }))}
          onValue={(one) => take(one === "true")}
        />
      );
    case "several":
      return (
        <SeveralField
          legend={label}
          values={(value as string[] | null) ?? []}
          options={field.options.map((one) => ({ value: one, label: t(`${field.words}.${one}`) }))}
          note={noteOf(props)}
          confirm={name !== "contains" || props.basis || name in draft.values ? undefined : t("shop.label_says_no_more")}
          onValues={take}
        />
      );
    case "numbers":
      return (
        <SeveralField
          legend={label}
          values={((value as number[] | null) ?? []).map(String)}
          options={field.options.map((one) => ({ value: String(one), label: t(field.words, { level_percent: one }) }))}
          note={noteOf(props)}
          onValues={(values) => take(values.map(Number))}
        />
      );
    case "amount":
      return <Quantity {...props} as={amountName(name, list, row, draft)} label={label} value={value as number | null} />;
    case "money":
      return <MoneyField label={label} currency={shop.currency} minor={value as number | null} problem={props.problem} onMinor={(minor, fault) => (props.onParseState(name, fault !== null), take(minor))} />;
    case "contents":
      return <Contents {...props} label={label} of={field.of} value={(value as Values[] | null) ?? []} />;
    default:
      return <Choice {...props} label={label} value={value} />;
  }
}

type Shown = Props & { label: string };

function Quantity(props: Shown & { value: number | null; as?: string }) {
  const { problem, label, value, onValue, onParseState } = props;
  const { field: name } = props.field;
  return (
    <QuantityField
      label={label}
      key={props.as}
      name={props.as ?? name}
      value={value}
      problem={problem}
      note={noteOf(props)}
      onValue={(next, fault) => {
        onParseState(name, fault !== null);
        onValue(name, next);
      }}
    />
  );
}

/** What is weighed has the reader's unit behind it. */
function amountName(name: string, list: Props["list"], row: Values, draft: Draft): string {
  const unit = list === "materials" ? (draft.values["unit"] ?? row["unit"]) : "kg";
  return unit === "kg" ? `${name}_kg` : name;
}

/** A word or a number of a few; a word of one's own (a base of layers) stays until another is chosen. */
function Choice(props: Shown & { value: unknown }) {
  const { field, shop, label, value, problem, onValue } = props;
  const { field: name } = field;
  const options = optionsOf(field, shop);
  const chosen = options.find((one) => one.key === String(value ?? ""));
  const shown = chosen ? options : [{ key: "", value, label: t(value === null ? "shop.choose" : "basis.own") }, ...options];
  return (
    <ChoiceField
      label={label}
      value={chosen?.key ?? ""}
      options={shown.map((one) => ({ value: one.key, label: one.label }))}
      problem={problem}
      note={noteOf(props)}
      onValue={(key) => onValue(name, shown.find((one) => one.key === key)?.value ?? null)}
    />
  );
}

const HALF_HOURS = Array.from({ length: 48 }, (_, nth) => nth * 1800);

function optionsOf(field: FormField, shop: Shop): { key: string; value: unknown; label: string }[] {
  if (field.kind === "row") return shop[field.of].map((one) => ({ key: one.id, value: one.id, label: one.name || t("shop.unnamed") }));
  if (field.kind === "clock") return HALF_HOURS.map((s) => ({ key: String(s), value: s, label: formatTime(new Date(2000, 0, 1, 0, 0, s).getTime()) }));
  if (field.kind !== "choice") return [];
  const label = (one: string | number) => (field.words ? t(`${field.words}.${one}`) : format(field.field, one));
  return field.options.map((one) => ({ key: String(one), value: one, label: label(one) }));
}

/** What the field is for and how to find its value; and, where it rests on an assumption or a measurement, that it does. */
function noteOf({ list, field, draft, basis, shop }: Props): string {
  if (field.kind === "row" && shop[field.of].length === 0) return t(`shop.no_${field.of}_yet`);
  const hint = `shop.hint.${keyOf(list, field.field)}`;
  const words = hasText(hint) ? [t(hint)] : [];
  if (draft.measured.includes(field.field)) words.push(t("shop.just_measured"));
  else if (!(field.field in draft.values) && basis === "assumed" && field.kind === "quantity") words.push(t("shop.assumed"));
  else if (!(field.field in draft.values) && basis === "measured") words.push(t("basis.measured_long"));
  return words.join(" ");
}
