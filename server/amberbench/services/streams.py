"""What is made of the events of each kind of stream. Events of a kind that is not here are kept and handed on."""

from collections.abc import Callable, Mapping, Sequence
from contextlib import suppress
from typing import NamedTuple

from flask import Flask
from sqlalchemy import ScalarResult
from sqlalchemy.orm import Session

from amberbench.store import Unusable, queries
from amberbench.store.models import EventRow
from amberbench.store.queries import Positions

from . import folding, set_aside, shop, stream_documents
from .documents import NewEvents


class StreamKind(NamedTuple):
    """One kind of stream: its fold after a push, where the events are that a phone starts from (one that began when the
    log had come to a position; None: now), its projection made anew (how many rows)."""

    fold_new_events: Callable[[Session, NewEvents], None]
    positions_to_start_from: Callable[[Session, int | None], Sequence[Positions]]
    rebuild: Callable[[], int]


KINDS = {
    "shop": StreamKind(shop.fold_new_events, shop.positions_to_start_from, shop.rebuild),
    "batch": StreamKind(folding.fold_new_events, queries.positions_of_unclosed, folding.rebuild),
    **{kind: StreamKind(*stream_documents.projection(kind)) for kind in stream_documents.KINDS},
}


def _fold_let_in(session: Session, new: NewEvents) -> None:
    """Folds again what an event belongs to that was let in or kept out."""
    for row in queries.events_by_id(session, list(new.by_id)).values():
        if row.stream_kind == "batch":
            queries.forget_contribution(session, row.stream_id)
            folding.refold_batch(session, row.stream_id)
        elif row.stream_kind == "shop":
            shop.fold(session, new.received_ms)
        elif row.stream_kind in stream_documents.KINDS:
            stream_documents.refold(session, row.stream_kind, row.stream_id)


KINDS[set_aside.STREAM] = StreamKind(
    _fold_let_in, lambda _, _since: [queries.positions_of_kind(set_aside.STREAM)], lambda: 0
)


def fold_new_events(session: Session, new_by_kind: Mapping[str, NewEvents]) -> None:
    """Folds what a push brought, by kind of stream."""
    for kind, new in new_by_kind.items():
        if kind in KINDS:
            KINDS[kind].fold_new_events(session, new)


def events_to_start_from(session: Session, after: int, upto: int) -> ScalarResult[EventRow]:
    """What a phone starts from, between two positions: of each kind what it asks for, of kinds not known here all."""
    since = upto if after else None
    known = [one for kind in KINDS.values() for one in kind.positions_to_start_from(session, since)]
    return queries.events_among(session, known + queries.positions_of_other_streams(KINDS), after, upto)


def rebuild() -> dict[str, int]:
    """Makes every projection anew from the log; how many rows of each kind of stream."""
    return {name: kind.rebuild() for name, kind in KINDS.items()}


def fold_outdated(app: Flask) -> None:
    """Folds again what an earlier engine folded, beside the serving: a year of batches takes a while.

    Until then what that engine found is shown. Data that cannot be used are told by every answer.
    """
    with app.app_context(), suppress(Unusable):
        folding.fold_outdated()
        stream_documents.fold_outdated()
