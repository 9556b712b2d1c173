import { useEffect, useState } from "preact/hooks";

import type { ProblemDocument, Values, Warning } from "../../documents";
import { useKeptForm } from "../../products/shared/useKeptForm";
import { EngineProblem, problemAt } from "../../problems";
import { go } from "../../router";
import { boughtMaterials, checkLot, keepHalfMade, keepWaitingPhoto, lots, newId, shop, takeLotPhoto, waitingPhoto, writeFact } from "../../state";
import { problemText, t } from "../../text";
import { CountField } from "../../ui/CountField";
import { QuantityField, TimeField, WordsField } from "../../ui/fields";
import { MoneyField } from "../../ui/MoneyField";
import { TakePhoto, type PhotoOutcome } from "../../ui/TakePhoto";
import { Scan } from "../Scan";

interface Draft {
  material: string;
  packs: number;
  pack_amount: number | null;
  supplier_lot: string;
  supplier: string;
  price_minor: number | null;
  best_by: string;
}

const NOTHING: Draft = { material: "", packs: 1, pack_amount: null, supplier_lot: "", supplier: "", price_minor: null, best_by: "" };

/** A delivery: what, how many packs, lot, price, best by, and a photo of its label. A form half made is kept. */
export function DeliveryForm() {
  const [draft, setDraft] = useKeptForm<Draft>("delivery", () => NOTHING, false);
  const [faults, setFaults] = useState<Record<string, boolean>>({});
  const [problem, setProblem] = useState<ProblemDocument | null>(null);
  const [warnings, setWarnings] = useState<Warning[]>([]);
  const [photo, setPhoto] = useState<Blob | null>(null);
  useEffect(() => void waitingPhoto().then((kept) => kept && setPhoto(kept)), []);
  const bought = boughtMaterials();
  const material = bought.find((one) => one.material === draft.material);
  const change = (part: Partial<Draft>) => {
    setProblem(null);
    setWarnings([]);
    setDraft((old) => ({ ...old, ...part }));
  };
  const ready = material !== undefined && draft.pack_amount !== null && !Object.values(faults).includes(true);
  const keep = async () => {
    if (!ready) return;
    const supplierRow = shop.value?.suppliers.find((row) => row.name === draft.supplier);
    const body: Values = { ...draft, unit: material.unit, best_by: draft.best_by || null, supplier_id: supplierRow?.id ?? null, currency: shop.value?.currency ?? "" };
    const id = newId();
    try {
      const checked = await checkLot(id, "received", body);
      if (checked.warnings.length > 0 && warnings.length === 0) return setWarnings(checked.warnings);
      await writeFact("lot", id, "received", body);
      keepHalfMade("delivery", null);
      if (photo) await takeLotPhoto(id, photo);
      await keepWaitingPhoto(null);
      go(`/stock/${id}`);
    } catch (error) {
      if (!(error instanceof EngineProblem)) throw error;
      setProblem(error.problem);
    }
  };
  const picked = async (file: File): Promise<PhotoOutcome> => {
    setPhoto(file);
    return keepWaitingPhoto(file);
  };
  const chosen = (name: string) => {
    const found = bought.find((one) => one.material === name);
    const last = [...lots.value.values()].filter((lot) => lot.material === name).at(-1);
    change({ material: name, pack_amount: found?.pack_amount ?? (last && last.packs > 0 ? last.amount / last.packs : null), supplier: last?.supplier ?? supplierOf(name) });
  };
  return (
    <form class="trade-form" onSubmit={(event) => (event.preventDefault(), void keep())}>
      <fieldset class="several">
        <legend>{t("stock.what")}</legend>
        {bought.map((one) => (
          <button type="button" class="chip" key={one.material} aria-pressed={one.material === draft.material} onClick={() => chosen(one.material)}>
            {one.name || t("shop.unnamed")}
          </button>
        ))}
      </fieldset>
      <CountField label={t("stock.packs")} value={draft.packs} least={1} most={100_000} onValue={(packs) => change({ packs })} />
      <QuantityField key={draft.material} label={t("stock.pack_amount")} name={material?.unit === "each" ? "pack_amount" : "pack_amount_kg"} value={draft.pack_amount} problem={problemAt(problem, "pack_amount")} onValue={(pack_amount, fault) => (setFaults((old) => ({ ...old, pack: fault !== null })), change({ pack_amount }))} />
      <Scan onFound={({ lot, bestBy }) => change({ supplier_lot: lot.slice(0, 60), ...(bestBy && { best_by: bestBy }) })} />
      <WordsField label={t("stock.lot")} value={draft.supplier_lot} most={60} onValue={(supplier_lot) => change({ supplier_lot })} />
      <TimeField label={t("stock.best_by_field")} kind="date" value={draft.best_by} problem={problemAt(problem, "best_by")} onValue={(best_by) => change({ best_by })} />
      <MoneyField label={t("stock.price")} currency={shop.value?.currency ?? ""} minor={draft.price_minor} problem={problemAt(problem, "price_minor")} onMinor={(price_minor, fault) => (setFaults((old) => ({ ...old, price: fault !== null })), change({ price_minor }))} />
      <WordsField label={t("stock.supplier")} value={draft.supplier} most={80} onValue={(supplier) => change({ supplier })} />
      <TakePhoto look="go go-quiet" kept="stock.photo_waits" onPick={picked} />
      {photo && <Waiting photo={photo} />}
      {problem && <p class="card card-wrong" role="alert">{problemText(problem)}</p>}
      {warnings.map((one) => (
        <p class="warning-line" role="alert" key={one.code}>
          {t(`warning.${one.code}`, one.values as Values)}
        </p>
      ))}
      <button type="submit" class="go" aria-disabled={!ready}>
        {t(warnings.length > 0 ? "stock.all_the_same" : "stock.keep")}
      </button>
      <a class="go go-quiet" href="/stock">
        {t("button.back")}
      </a>
    </form>
  );
}

/** The photo that goes with the delivery, also after a reload. */
function Waiting({ photo }: { photo: Blob }) {
  const [url, setUrl] = useState("");
  useEffect(() => {
    const made = URL.createObjectURL(photo);
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [photo]);
  return (
    <div class="photos">
      <span class="photo">{url && <img src={url} alt={t("stock.label_photo")} />}</span>
    </div>
  );
}

/** Who the shop says it is bought from. */
function supplierOf(material: string): string {
  const known = shop.value;
  const [list, id] = material.split("/");
  const rows: { id: string; supplier_id: string | null }[] = known && (list === "caramels" || list === "chocolates" || list === "materials") ? known[list] : [];
  const supplier = rows.find((row) => row.id === id)?.supplier_id;
  return known?.suppliers.find((row) => row.id === supplier)?.name ?? "";
}
