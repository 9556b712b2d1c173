import { useRef, useState } from "preact/hooks";

import { EngineProblem, saveList, takeIn } from "../state";
import { t } from "../text";

/** Saves a list as a file and takes such a file in: all of it, or nothing and the line that cannot be read. */
export function ListFiles({ place }: { place: "lots" | "orders" | "packs" }) {
  const input = useRef<HTMLInputElement>(null);
  const [said, setSaid] = useState<{ text: string; wrong: boolean } | null>(null);
  const failed = (error: unknown) => setSaid({ text: error instanceof EngineProblem ? error.problem.message : t("lists.off_line"), wrong: true });
  const save = (kind: "csv" | "json") => void saveList(place, kind).then(() => setSaid(null), failed);
  const picked = async (from: HTMLInputElement) => {
    const file = from.files?.[0];
    if (file) await file.text().then((text) => takeIn(place, text)).then((taken) => setSaid({ text: t("lists.taken_in", { ...taken }), wrong: false }), failed);
    // The same file once more is taken in once more.
    from.value = "";
  };
  return (
    <details class="card no-print">
      <summary>{t(`lists.files_${place}`)}</summary>
      <div class="buttons">
        <button type="button" onClick={() => save("csv")}>
          {t("lists.csv")}
        </button>
        <button type="button" onClick={() => save("json")}>
          {t("lists.json")}
        </button>
        <button type="button" onClick={() => input.current?.click()}>
          {t("lists.take_in")}
        </button>
      </div>
      <input ref={input} type="file" accept=".csv,.json,text/csv,application/json" hidden onChange={(event) => void picked(event.currentTarget)} />
      <p role="status" class={said?.wrong ? "warning-line" : "quiet"}>
        {said?.text}
      </p>
    </details>
  );
}
