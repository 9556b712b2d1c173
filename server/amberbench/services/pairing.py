"""Phones of the shop: how one is paired, by what it is known again, and how it is revoked.

A code lets one phone in, once. The phone then holds a random token; codes and tokens are kept as hashes only. They are
random and long, so a plain hash is enough (the eight digits are short: five tries, five minutes).
"""

import hashlib
import io
import secrets
from contextlib import suppress
from typing import Any, NamedTuple
from uuid import uuid4

import segno

from amberbench.engine.core.problems import Problem
from amberbench.store import Unusable, phone_queries, reading, writing
from amberbench.store.models import PairingRow, PhoneRow

from . import roles
from .event_validation import NAME

LINK_MS = 10 * 60 * 1000
"""How long the link for the owner's phone that a start prints is good."""
DIGITS_MS = 5 * 60 * 1000
"""How long a link with eight digits is good."""
DIGITS = 8
MOST_TRIES = 5
"""So many wrong digits close every pairing that waits for digits; their links go on."""
UNSEEN_MS = 400 * 24 * 3600 * 1000
"""A phone not seen for longer is paired anew: no browser keeps a cookie longer (draft-ietf-httpbis-rfc6265bis, 5.5)."""
SEEN_EVERY_MS = 5 * 60 * 1000
LONGEST_NAME = 80


class Phone(NamedTuple):
    """A paired phone. seen_ms: when it was last known to have come, to five minutes."""

    phone_id: str
    name: str
    role: str
    device_id: str
    paired_ms: int
    seen_ms: int


class Offer(NamedTuple):
    """What lets one phone in. digits: None where only the link does; expires_ms: good until then."""

    link: str
    digits: str | None
    expires_ms: int

    def terminal(self) -> str:
        """The link as a QR code for a terminal."""
        drawn = io.StringIO()
        segno.make(self.link, error="l").terminal(drawn, border=2, compact=True)
        return drawn.getvalue()

    def picture(self) -> str:
        """The same as the address of a picture (a data URI of SVG)."""
        return str(segno.make(self.link, error="l").svg_data_uri(border=4, light="white", omitsize=True))


def offer(address: str, name: str, role: str, now_ms: int, with_digits: bool = True) -> Offer:
    """Lets one more phone in, with this name and role. address: of this server, as the phone reaches it.

    The code stands behind the "#" of the link, so it is in no log and no referrer. Raises Problem for a name or a role.
    """
    name = name.strip()
    if not 0 < len(name) <= LONGEST_NAME:
        raise Problem("name", "too_long" if name else "missing", len(name), high=LONGEST_NAME)
    if role not in roles.ROLES:
        raise Problem("role", "not_an_option", role[:60], accepted=list(roles.ROLES))
    code = secrets.token_urlsafe(32)
    digits = f"{secrets.randbelow(10**DIGITS):0{DIGITS}}" if with_digits else None
    expires_ms = now_ms + (DIGITS_MS if with_digits else LINK_MS)
    with writing() as session:
        phone_queries.forget_pairings(session, now_ms)
        of_digits = _hash(digits) if digits else None
        row = {"name": name, "role": role, "expires_ms": expires_ms, "wrong_tries": 0}
        session.add(PairingRow(code_hash=_hash(code), digits_hash=of_digits, **row))
    return Offer(f"{address.rstrip('/')}/pair#{code}", digits, expires_ms)


def pair(code: str, device_id: str, now_ms: int) -> tuple[str, Phone]:
    """Lets a phone in by the code of a link or by eight digits: its token, which is kept nowhere here, and the phone.

    A phone that was paired already is let in anew; its former token ends. Raises Problem: `code_wrong`, `code_used`,
    `code_over` (out of time, or too many wrong tries), `malformed`.
    """
    if not NAME.fullmatch(device_id):
        raise Problem("device_id", "malformed", device_id[:60])
    code = code.replace(" ", "")
    token = secrets.token_urlsafe(32)
    with writing() as session:
        row = phone_queries.pairing(session, _hash(code))
        if row is None:
            # Counted and kept: the problem is raised outside, or the count would be taken back with it.
            phone_queries.count_wrong_digits(session, now_ms)
        problem = _problem_of(row, code, now_ms)
        if row is not None and problem is None:
            row.used_ms = now_ms
            phone_queries.revoke_phones(session, now_ms, device_id=device_id)
            phone = Phone(str(uuid4()), row.name, row.role, device_id, now_ms, now_ms)
            session.add(PhoneRow(token_hash=_hash(token), **phone._asdict()))
    if problem is not None:
        raise problem
    return token, phone


def _problem_of(row: PairingRow | None, code: str, now_ms: int) -> Problem | None:
    if row is None:
        return Problem("code", "code_wrong")
    if row.used_ms is not None:
        return Problem("code", "code_used")
    by_digits = row.digits_hash == _hash(code)
    if now_ms >= row.expires_ms or (by_digits and row.wrong_tries >= MOST_TRIES):
        return Problem("code", "code_over")
    return None


def phone_of(token: str, now_ms: int) -> Phone | None:
    """The phone that holds a token; None for one that is unknown, revoked, or was not seen for too long."""
    with reading() as session:
        row = phone_queries.phone_by_token(session, _hash(token))
        if row is None or row.revoked_ms is not None or now_ms > row.seen_ms + UNSEEN_MS:
            return None
        return _phone(row)


def seen(phone: Phone, now_ms: int) -> None:
    """Keeps when a phone was last here. A disk that is full is no reason to send it away."""
    with suppress(Unusable), writing() as session:
        phone_queries.set_seen(session, phone.phone_id, now_ms)


def phones() -> list[Phone]:
    """The phones that may come in, in the order they were paired."""
    with reading() as session:
        return [_phone(row) for row in phone_queries.phones(session)]


def has_owner() -> bool:
    """Whether there is a phone that can pair others."""
    return any(phone.role == roles.OWNER for phone in phones())


def revoke(phone_id: str, now_ms: int) -> bool:
    """Lets a phone in no more, from its next request on; False when there is none of this id."""
    with writing() as session:
        return phone_queries.revoke_phones(session, now_ms, phone_id=phone_id)


def document(phone: Phone, own: str | None = None) -> dict[str, Any]:
    """A phone as it is told of; own: the id of the phone that asks."""
    return phone._asdict() | {"own": phone.phone_id == own}


def listed(own: str | None) -> list[dict[str, Any]]:
    """The phones as Settings list them, with how many events in the name of each another one brought."""
    with reading() as session:
        relayed = phone_queries.relayed(session)
    return [document(phone, own) | {"relayed": relayed.get(phone.device_id, 0)} for phone in phones()]


def _phone(row: PhoneRow) -> Phone:
    return Phone(*(getattr(row, name) for name in Phone._fields))


def _hash(secret: str) -> str:
    return hashlib.sha256(secret.encode()).hexdigest()
