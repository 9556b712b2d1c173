"""What is made of the events of each kind of stream. Events of a kind that is not here are kept and handed on."""

from collections.abc import Callable, Mapping, Sequence
from typing import NamedTuple

from sqlalchemy.orm import Session

from amberbench.store import queries
from amberbench.store.models import EventRow

from . import folding, shop
from .documents import NewEvents


class StreamKind(NamedTuple):
    """One kind of stream: its fold after a push, what a phone starts from, its projection made anew (how many rows)."""

    fold_new_events: Callable[[Session, NewEvents], None]
    events_to_start_from: Callable[[Session], Sequence[EventRow]]
    rebuild: Callable[[], int]


KINDS = {
    "shop": StreamKind(shop.fold_new_events, shop.events_to_start_from, shop.rebuild),
    "batch": StreamKind(folding.fold_new_events, queries.events_of_unclosed, folding.rebuild),
}


def fold_new_events(session: Session, new_by_kind: Mapping[str, NewEvents]) -> None:
    """Folds what a push brought, by kind of stream."""
    for kind, new in new_by_kind.items():
        if kind in KINDS:
            KINDS[kind].fold_new_events(session, new)


def events_to_start_from(session: Session) -> list[EventRow]:
    """What a phone starts from: of each kind what it asks for, and all of those that only newer phones know."""
    known = [row for kind in KINDS.values() for row in kind.events_to_start_from(session)]
    return known + queries.events_of_other_streams(session, KINDS)


def rebuild() -> dict[str, int]:
    """Makes every projection anew from the log; how many rows of each kind of stream."""
    return {name: kind.rebuild() for name, kind in KINDS.items()}
