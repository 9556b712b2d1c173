import type { Shop, ShopEdit, ShopList } from "../../documents";
import { newId, type ShopRow } from "../../state";
import { ROW_TOOLS } from "../../products/rowTools";
import { problemAt } from "../../problems";
import { problemText, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { useUnparsableFields } from "../../ui/useUnparsableFields";
import { go } from "../../router";
import { withValue, editsOf, fieldsOf, valuesOf, FORMS, keyOf, NOTHING_CHANGED, titleOf, undoOf } from "../../products/shared/rowForms";
import { DensityGuide, WaterGuide } from "./Guides";
import { writeEdits } from "../../products/shared/shopEdits";
import { RowField } from "./RowField";
import { objection, useDraft, useRow } from "./useDraft";

interface Props {
  list: ShopList | "shop";
  id: string;
  shop: Shop;
}

/** One row of the shop, or the shop itself: what is typed is checked at once and written when it is kept. */
export function RowForm({ list, id, shop }: Props) {
  const found = useRow(list, id, shop);
  const back = list === "shop" ? "/shop" : `/shop/${list}`;
  const title = list === "shop" ? t("shop.the_shop") : id === "new" ? t(`shop.add.${list}`) : found ? titleOf(list, found.row) : "";
  return (
    <Desk title={title || t("shop.title")} here="shop">
      {found ? <Filling list={list} id={id} shop={shop} {...found} /> : <Missing fresh={id === "new"} />}
      <a class="go go-quiet" href={back}>
        {t("button.back")}
      </a>
    </Desk>
  );
}

function Missing({ fresh }: { fresh: boolean }) {
  return <p class="card">{t(fresh ? "desk.starting" : "shop.no_such_row")}</p>;
}

function Filling({ list, id, shop, row, basis }: Props & { row: ShopRow; basis: Record<string, string> }) {
  const { draft, setDraft, problem, setProblem } = useDraft(list, row);
  const [faults, setParseState] = useUnparsableFields();
  const values = valuesOf(list, row, draft);
  const unparsable = faults.filter((name) => name in values);
  const { fields, ...groups } = fieldsOf(list, row, draft);
  const { guide } = FORMS[list];
  const Tool = list === "shop" ? undefined : ROW_TOOLS[list];
  const doc = list === "shop" ? "shop" : `${list}/${id}`;
  const set = (field: string, value: unknown, measured = false) => setDraft((old) => withValue(old, field, value, measured));
  const field = (one: (typeof fields)[number]) => (
    <RowField key={one.field} list={list} field={one} shop={shop} row={row} draft={draft} basis={basis[`${doc}.${one.field}`]} problem={problemAt(problem, one.field)} onValue={set} onParseState={setParseState} />
  );
  /** Wrong, or just measured by a guided test: it is not left folded. */
  const isNow = (one: (typeof fields)[number]) => Boolean(problemAt(problem, one.field)) || draft.measured.includes(one.field);
  const edits = editsOf(doc, row, draft, basis);
  const keep = async () => {
    if (edits.length === 0 || unparsable.length > 0) return;
    const wrong = await objection(list, values);
    setProblem(wrong);
    if (wrong) return;
    await kept(list, id, row, edits, basis, titleOf(list, values));
    setDraft(NOTHING_CHANGED);
  };
  const ready = edits.length > 0 && unparsable.length === 0 && !problem;
  return (
    <form class="plan-form shop-form" onSubmit={(event) => (event.preventDefault(), void keep())}>
      {fields.map(field)}
      {Tool && id !== "new" && <Tool row={row} shop={shop} values={values} onValue={set} />}
      {guide === "density" && <DensityGuide onMeasured={(value) => set("density_kg_m3", value, true)} />}
      {guide === "water" && <WaterGuide onMeasured={(value) => set("rated_w", value, true)} />}
      {Object.entries(groups).map(([group, own]) =>
        own.length === 0 ? null : (
          <details class="card" key={group} open={group === "own" || own.some(isNow) || undefined}>
            <summary>{t(`shop.${group}.${list}`)}</summary>
            {own.map(field)}
          </details>
        ),
      )}
      {problem && <p class="card card-wrong">{problemText(problem, t(`shop.${keyOf(list, problem.field)}`))}</p>}
      <button type="submit" class="go" aria-disabled={!ready}>
        {t("shop.keep")}
      </button>
      {list !== "shop" && id !== "new" && (
        <button type="button" class="go go-quiet" onClick={() => void removed(list, id, row)}>
          {t("shop.remove", { name: titleOf(list, row) })}
        </button>
      )}
    </form>
  );
}

/** Writes the edits and, once they are on the disk, goes back to the list; a new row gets its id here. */
async function kept(list: ShopList | "shop", id: string, row: ShopRow, edits: ShopEdit[], basis: Record<string, string>, name: string) {
  if (list !== "shop" && id === "new") {
    const doc = `${list}/${newId()}`;
    const own = edits.map((edit) => ({ ...edit, doc }));
    await writeEdits(own, t("shop.added", { name }), [{ doc, field: "removed", value: true, basis: "typed" }]);
  } else await writeEdits(edits, t("shop.changed", { name }), undoOf(edits, row, basis));
  go(list === "shop" ? "/shop" : `/shop/${list}`);
}

async function removed(list: ShopList, id: string, row: ShopRow): Promise<void> {
  const edit = (value: boolean): ShopEdit => ({ doc: `${list}/${id}`, field: "removed", value, basis: "typed" });
  await writeEdits([edit(true)], t("shop.removed", { name: titleOf(list, row) }), [edit(false)]);
  go(`/shop/${list}`);
}
