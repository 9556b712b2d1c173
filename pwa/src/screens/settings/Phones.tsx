import { useEffect, useState } from "preact/hooks";

import type { PairedPhone, PairingOffer, ProblemDocument } from "../../documents";
import { EngineProblem } from "../../problems";
import { listPhones, offerPairing, revokePhone, type Role, sync } from "../../state";
import { formatDay, formatTime, problemText, t } from "../../text";
import { Card } from "../../ui/Card";
import { SwitchField, WordsField } from "../../ui/fields";

const ROLES: Role[] = ["bench", "reader", "owner"];

/** What this phone may do; on an owner's phone, all phones of the shop. */
export function Phones() {
  const { role } = sync.value;
  return (
    <Card title={t("phones.title")}>
      {role !== null && role !== "none" && <p>{t(`phones.role_${role}`)}</p>}
      {role === "owner" ? <AllPhones /> : <PairLink />}
    </Card>
  );
}

function PairLink() {
  return (
    <a class="row-link" href="/pair">
      <b>{t("button.pair")}</b>
    </a>
  );
}

function AllPhones() {
  const [phones, setPhones] = useState<PairedPhone[]>([]);
  const [away, setAway] = useState(false);
  const look = async () => {
    const found = await listPhones().catch(() => null);
    setAway(found === null);
    if (found) setPhones(found);
  };
  useEffect(() => void look(), []);
  return (
    <>
      <ul class="cards">
        {phones.map((phone) => (
          <OnePhone key={phone.phone_id} phone={phone} revoked={look} />
        ))}
      </ul>
      {away && <p role="alert">{t("pair.away")}</p>}
      <LetIn shown={look} />
    </>
  );
}

function OnePhone({ phone, revoked }: { phone: PairedPhone; revoked: () => Promise<void> }) {
  const [asked, setAsked] = useState(false);
  const revoke = async () => {
    if (asked) await revokePhone(phone.phone_id).then(revoked, () => setAsked(false));
    else setAsked(true);
  };
  return (
    <li>
      <p>
        <b>{phone.name}</b> {phone.own ? t("phones.own") : t("phones.seen", { time: `${formatDay(phone.seen_ms)} ${formatTime(phone.seen_ms)}` })}
      </p>
      <p class="quiet">{t(`phones.role_${phone.role}`)}</p>
      {!phone.own && (
        <button type="button" onClick={() => void revoke()}>
          {t(asked ? "button.revoke_really" : "button.revoke", { name: phone.name })}
        </button>
      )}
      {asked && <p role="status">{t("phones.revoked_keeps")}</p>}
    </li>
  );
}

/** Shows a code for one more phone. */
function LetIn({ shown }: { shown: () => Promise<void> }) {
  const [name, setName] = useState("");
  const [role, setRole] = useState<Role>("bench");
  const [offer, setOffer] = useState<PairingOffer | null>(null);
  const [trouble, setTrouble] = useState<ProblemDocument | "away" | null>(null);
  const show = async () => {
    setTrouble(null);
    try {
      setOffer(await offerPairing(name, role));
      await shown();
    } catch (error) {
      setTrouble(error instanceof EngineProblem ? error.problem : "away");
    }
  };
  return (
    <>
      <WordsField label={t("phones.name")} value={name} most={80} onValue={setName} />
      <SwitchField legend={t("phones.role")} value={role} options={ROLES.map((value) => ({ value, label: t(`phones.short_${value}`) }))} onValue={(one) => setRole(one as Role)} />
      <p class="quiet">{t(`phones.role_${role}`)}</p>
      <button type="button" class="go go-quiet" onClick={() => void show()}>
        {t("button.show_code")}
      </button>
      {trouble && <p role="alert">{trouble === "away" ? t("pair.away") : problemText(trouble, t("phones.name"))}</p>}
      {offer && (
        <>
          <img class="pairing-code" src={offer.picture} alt={t("phones.code")} />
          <p role="status">{t("phones.offer", { digits: (offer.digits ?? "").replace(/^..../, "$& "), time: formatTime(offer.expires_ms) })}</p>
        </>
      )}
    </>
  );
}
