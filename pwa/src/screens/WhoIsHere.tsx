import { useState } from "preact/hooks";

import { changeSettings, personHere, shop } from "../state";
import { t } from "../text";
import { Sheet } from "../ui/Sheet";

/** The initial of who is at this phone; a tap shows the shop's people, another chooses one. A shop that lists nobody has none. */
export function WhoIsHere() {
  const [open, setOpen] = useState(false);
  const words = whoWords();
  if (words === null) return null;
  const here = personHere.value;
  return (
    <>
      <button type="button" class="initial" aria-label={words} onClick={() => setOpen(true)}>
        {here ? initialOf(here) : "–"}
      </button>
      {open && <PeopleSheet onClose={() => setOpen(false)} />}
    </>
  );
}

/** Who is at this phone, in words; null: the shop lists nobody. */
export function whoWords(): string | null {
  if (!shop.value?.people?.length) return null;
  const here = personHere.value;
  return here ? t("people.here", { name: here.name }) : t("people.title");
}

/** The shop's people, to choose who is at this phone. */
export function PeopleSheet({ onClose }: { onClose: () => void }) {
  const here = personHere.value;
  const choose = (person_id: string | null) => {
    onClose();
    void changeSettings({ person_id });
  };
  return (
    <Sheet title={t("people.title")} back={t("button.back")} onClose={onClose}>
      <p>{t("people.why")}</p>
      {shop.value?.people?.map((row) => (
        <button type="button" class="side" key={row.id} aria-pressed={row === here} onClick={() => choose(row.id)}>
          <b class="initial">{initialOf(row)}</b>
          {row.name || t("shop.unnamed")}
        </button>
      ))}
      <button type="button" class="side" aria-pressed={!here} onClick={() => choose(null)}>
        <b class="initial">–</b>
        {t("people.nobody")}
      </button>
    </Sheet>
  );
}

function initialOf({ initial, name }: { initial?: string; name?: string }): string {
  return initial || [...(name ?? "")][0] || "?";
}
