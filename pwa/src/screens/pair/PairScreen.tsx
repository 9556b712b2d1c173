import { useEffect, useState } from "preact/hooks";

import type { PairedPhone, ProblemDocument } from "../../documents";
import { EngineProblem } from "../../problems";
import { pairThisPhone } from "../../state";
import { problemText, t } from "../../text";
import { Desk } from "../../ui/Desk";
import { WordsField } from "../../ui/fields";

/** So many has a code that is typed. */
const DIGITS = 8;

/** Pairs this phone: by itself when it was opened by a link with a code, else by the eight digits typed here. */
export function PairScreen() {
  const [digits, setDigits] = useState("");
  const [phone, setPhone] = useState<PairedPhone | null>(null);
  const [trouble, setTrouble] = useState<ProblemDocument | "away" | "short" | null>(null);
  const [asking, setAsking] = useState(false);
  const pair = async (code: string) => {
    setAsking(true);
    setTrouble(null);
    try {
      setPhone(await pairThisPhone(code));
    } catch (error) {
      setTrouble(error instanceof EngineProblem ? error.problem : "away");
    } finally {
      setAsking(false);
    }
  };
  const typed = digits.replace(/\D/g, "");
  useEffect(() => {
    const code = location.hash.slice(1);
    // Used once: it shall not stay in the history.
    history.replaceState(null, "", location.pathname);
    if (code) void pair(code);
  }, []);
  if (phone) return <Paired phone={phone} />;
  return (
    <Desk title={t("button.pair")} here="shop">
      <p class="card">{t("pair.how")}</p>
      <WordsField label={t("pair.digits")} value={digits} most={9} inputMode="numeric" onValue={setDigits} />
      <button type="button" class="go" disabled={asking} onClick={() => (typed.length === DIGITS ? void pair(typed) : setTrouble("short"))}>
        {t("button.pair")}
      </button>
      {asking && <p role="status">{t("pair.asking")}</p>}
      {trouble && <p role="alert">{trouble === "short" ? t("pair.short", { n: typed.length }) : trouble === "away" ? t("pair.away") : problemText(trouble, t("pair.digits"))}</p>}
    </Desk>
  );
}

function Paired({ phone }: { phone: PairedPhone }) {
  return (
    <Desk title={t("pair.done")} here="shop">
      <p class="card" role="status">
        <b>{phone.name}</b>. {t(`phones.role_${phone.role}`)}.
      </p>
      <a class="go" href="/">
        {t("desk.place_today")}
      </a>
    </Desk>
  );
}
