"""Queries of the paired phones and of the codes that pair one, by name; those that write say so."""

from collections.abc import Sequence

from sqlalchemy import delete, func, or_, select, update
from sqlalchemy.orm import Session

from .models import FLAGGED, EventRow, PairingRow, PhoneRow


def phones(session: Session) -> Sequence[PhoneRow]:
    """The phones that are not revoked, in the order they were paired."""
    asked = select(PhoneRow).where(PhoneRow.revoked_ms.is_(None)).order_by(PhoneRow.paired_ms, PhoneRow.phone_id)
    return session.scalars(asked).all()


def phone_by_token(session: Session, token_hash: str) -> PhoneRow | None:
    """The phone with a token, revoked or not."""
    return session.scalar(select(PhoneRow).where(PhoneRow.token_hash == token_hash))


def paired_devices(session: Session) -> set[str]:
    """The names under which paired phones write events, revoked ones too."""
    return set(session.scalars(select(PhoneRow.device_id)))


def relayed(session: Session) -> dict[str, int]:
    """Device → how many of its events came through another phone, where there are any."""
    of_another = EventRow.flags.like("%relayed%")
    asked = select(EventRow.device_id, func.count()).where(FLAGGED, of_another).group_by(EventRow.device_id)
    return {device_id: number for device_id, number in session.execute(asked)}


def set_seen(session: Session, phone_id: str, seen_ms: int) -> None:
    """Keeps when a phone was last here."""
    session.execute(update(PhoneRow).where(PhoneRow.phone_id == phone_id).values(seen_ms=seen_ms))


def revoke_phones(session: Session, revoked_ms: int, **which: str) -> bool:
    """Revokes the phones, not revoked yet, that have some columns so; whether there was one."""
    asked = select(PhoneRow).where(PhoneRow.revoked_ms.is_(None)).filter_by(**which)
    found = session.scalars(asked).all()
    for row in found:
        row.revoked_ms = revoked_ms
    return bool(found)


def pairing(session: Session, code_hash: str) -> PairingRow | None:
    """The pairing of a link's code, or of eight digits; of several the one that is good longest."""
    is_code = or_(PairingRow.code_hash == code_hash, PairingRow.digits_hash == code_hash)
    return session.scalar(select(PairingRow).where(is_code).order_by(PairingRow.expires_ms.desc()).limit(1))


def count_wrong_digits(session: Session, now_ms: int) -> None:
    """Counts a wrong try for every pairing that waits: nobody knows which one was meant."""
    open_ones = (PairingRow.expires_ms > now_ms, PairingRow.used_ms.is_(None))
    session.execute(update(PairingRow).where(*open_ones).values(wrong_tries=PairingRow.wrong_tries + 1))


def forget_pairings(session: Session, now_ms: int) -> None:
    """Forgets pairings out of time for a day; until then whoever comes with one is told why it is not taken."""
    session.execute(delete(PairingRow).where(PairingRow.expires_ms < now_ms - 24 * 3600 * 1000))
