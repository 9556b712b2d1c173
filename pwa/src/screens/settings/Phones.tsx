import { useEffect, useState } from "preact/hooks";

import type { PairedPhone, PairingOffer, ProblemDocument } from "../../documents";
import { EngineProblem } from "../../problems";
import { listPhones, offerPairing, revokePhone, type Role, sync } from "../../state";
import { formatDay, formatTime, problemText, t } from "../../text";
import { Card } from "../../ui/Card";
import { ServerStatus } from "../SyncStatus";
import { SwitchField, WordsField } from "../../ui/fields";

const ROLES: Role[] = ["bench", "reader", "owner"];

/** Names by which no other device reaches this server. */
const HERE_ALONE = /^(localhost|127\..*|\[::1\])$/;

/** What this phone may do; on an owner's phone, all phones of the shop. */
export function Phones() {
  const { role } = sync.value;
  return (
    <Card title={t("phones.title")}>
      {role === null ? <ServerStatus /> : role === "owner" ? <AllPhones /> : <ThisPhone role={role} />}
    </Card>
  );
}

function ThisPhone({ role }: { role: Role | "none" }) {
  return (
    <>
      <p>{t(role === "none" ? "desk.not_paired" : `phones.role_${role}`)}</p>
      <a class="row-link" href="/pair">
        <b>{t("button.pair")}</b>
      </a>
    </>
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
      <LetIn known={phones.length} look={look} />
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
        <b>{phone.name}</b> {phone.own ? t("phones.own") : t("phones.seen", { time: formatDay(phone.seen_ms) })}
      </p>
      <p class="quiet">{t(`phones.role_${phone.role}`)}</p>
      {!!phone.relayed && <p class="quiet">{t("phones.relayed", { n: phone.relayed })}</p>}
      {asked && <p role="status">{t("phones.revoked_keeps")}</p>}
      {!phone.own && (
        <p class="buttons">
          <button type="button" onClick={() => void revoke()}>
            {t(asked ? "button.revoke_really" : "button.revoke", { name: phone.name })}
          </button>
        </p>
      )}
    </li>
  );
}

/** How often the list is asked for while a code waits to be used (ms). */
const LOOK_MS = 3000;

/** Shows a code for one more phone, until that phone stands in the list or the time is over. known: phones in the list. */
function LetIn({ known, look }: { known: number; look: () => Promise<void> }) {
  const [name, setName] = useState("");
  const [role, setRole] = useState<Role>("bench");
  const [offer, setOffer] = useState<PairingOffer | null>(null);
  const [trouble, setTrouble] = useState<ProblemDocument | "away" | null>(null);
  useEffect(() => setOffer(null), [known]);
  useEffect(() => {
    if (!offer) return;
    const waiting = setInterval(() => (Date.now() < offer.expires_ms ? void look() : setOffer(null)), LOOK_MS);
    return () => clearInterval(waiting);
  }, [offer]);
  const show = async () => {
    setTrouble(null);
    try {
      setOffer(await offerPairing(name, role));
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
          {HERE_ALONE.test(location.hostname) && <p>{t("phones.here_alone")}</p>}
          <img class="pairing-code" src={offer.picture} alt={t("phones.code")} />
          <p role="status">{t("phones.offer", { digits: (offer.digits ?? "").replace(/^..../, "$& "), time: formatTime(offer.expires_ms) })}</p>
        </>
      )}
    </>
  );
}
