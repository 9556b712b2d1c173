"""Lots, orders and boxes packed: one projection for the three kinds of stream, their lists, and one of each."""

import logging
from collections.abc import Callable, Sequence
from typing import Any, NamedTuple

from sqlalchemy.orm import Session

from amberbench.engine import VERSION, catalogue
from amberbench.engine.core import log as engine_log
from amberbench.engine.core.problems import Problem
from amberbench.store import Unusable, queries, reading, stream_queries, writing
from amberbench.store.models import StreamDocumentRow
from amberbench.store.queries import Positions

from . import documents, set_aside, strict_json, tracing, unexpected_errors
from .documents import NewEvents
from .event_validation import NAME

log = logging.getLogger(__name__)
Document = dict[str, Any]

DAY_MS = 24 * 3600 * 1000
KEPT_MS, KEPT_OPEN_MS = 90 * DAY_MS, 400 * DAY_MS
"""A phone starts from what was closed within 90 days, and from what is open and not older than 400: caramel and
chocolate keep no longer (common practice, no published source). The rest it asks for on line."""


class Kind(NamedTuple):
    """When a document is: what lists are sorted by; since when it is over; and the members it is found by."""

    at: str
    is_over: Callable[[Document], bool]
    found_by: tuple[str, ...]


KINDS = {
    "lot": Kind(
        "received_ms",
        lambda lot: lot["merged_into"] is not None or bool(lot["counts"] and lot["counts"][-1]["left"] == 0),
        ("material", "supplier", "supplier_lot"),
    ),
    "order": Kind("wanted_ms", lambda order: order["state"] in ("handed", "cancelled"), ("customer", "note")),
    "pack": Kind("at_ms", lambda pack: pack["count"] <= 0, ("box_id", "code")),
}


class Projection(NamedTuple):
    """What `streams.KINDS` has of a kind of stream (`streams.StreamKind`)."""

    fold_new_events: Callable[[Session, NewEvents], None]
    positions_to_start_from: Callable[[Session, int | None], Sequence[Positions]]
    rebuild: Callable[[], int]


def projection(kind: str) -> Projection:
    """The fold after a push, what a phone starts from, and the table made anew, for one kind."""

    def fold_new_events(session: Session, new: NewEvents) -> None:
        session.flush()
        for stream_id in new.by_id:
            refold(session, kind, stream_id)

    def positions_to_start_from(session: Session, since: int | None) -> Sequence[Positions]:
        # What is closed between two pages is among what was closed lately.
        return stream_queries.positions_of_recent(kind, KEPT_OPEN_MS, KEPT_MS)

    def rebuild() -> int:
        with writing() as session:
            stream_queries.forget(session, kind)
            for stream_id in stream_queries.ids_to_fold(session, kind, VERSION):
                refold(session, kind, stream_id)
            return stream_queries.count(session, kind)

    return Projection(fold_new_events, positions_to_start_from, rebuild)


def refold(session: Session, kind: str, stream_id: str) -> None:
    """Folds a stream's events anew and keeps the document. Whatever goes wrong stays here: events must be kept."""
    rows = queries.events_of(session, kind, stream_id)
    events, _ = set_aside.split(session, [documents.event(row) for row in rows])
    row = StreamDocumentRow(kind=kind, id=stream_id, at_ms=0.0, closed_ms=None, search="", document=None)
    row.events, row.engine_version, row.broken = len(rows), VERSION, None
    try:
        _fill(row, kind, catalogue.call(f"{kind}.fold", {"id": stream_id, "events": events})["document"], events)
    except Exception as error:
        error_id = unexpected_errors.record(f"{kind} {stream_id} could not be folded", error)
        row.broken = f"{type(error).__name__}: {str(error)[:200]} ({error_id})"
    session.merge(row)
    if row.document:
        tracing.keep(session, kind, strict_json.read(row.document))


def _fill(row: StreamDocumentRow, kind: str, document: Document, events: list[Document]) -> None:
    about = KINDS[kind]
    newest_ms = max((engine_log.corrected_ms(event) for event in events), default=0.0)
    at_ms = document[about.at]
    row.at_ms = float(newest_ms if at_ms is None else at_ms)
    row.closed_ms = float(newest_ms) if about.is_over(document) else None
    row.search = " ".join(str(document[name] or "") for name in about.found_by).lower()
    row.document = strict_json.write(document)
    back = engine_log.taken_back(sorted(events, key=engine_log.total_key))
    if all(event["kind"] in engine_log.BACK_AND_FORTH or event["id"] in back for event in events):
        row.at_ms, row.closed_ms = stream_queries.TAKEN_BACK_MS, float(newest_ms)


def fold_outdated() -> None:
    """Folds again what another version of the engine folded, each in a transaction of its own."""
    for kind in KINDS:
        with reading() as session:
            outdated = stream_queries.ids_to_fold(session, kind, VERSION)
        for stream_id in outdated:
            _fold_again(kind, stream_id)


def _fold_again(kind: str, stream_id: str) -> None:
    try:
        with writing() as session:
            refold(session, kind, stream_id)
    except Unusable as error:  # tried again when it is read, and at the next start
        log.warning("%s %s could not be folded again: %s", kind, stream_id, error)


def page(kind: str, before: str | None, search: str, only_open: bool, limit: int) -> Document:
    """A page of the list, latest first: `{documents, more}`, before the one that the last page ended with; `search`:
    words that all stand in it. Raises Problem."""
    if before is not None and not NAME.fullmatch(before):
        raise Problem("before", "malformed", before[:60])
    with reading() as session:
        rows = stream_queries.before(session, kind, before, search.lower().split(), only_open, limit + 1)
        found = [strict_json.read(row.document) for row in rows[:limit] if row.document]
        return {"documents": found, "more": len(rows) > limit}


def one(kind: str, stream_id: str) -> Document | None:
    """`{document, broken, events, set_aside}` of one stream, its events in the order of the log; None if unknown."""
    if not NAME.fullmatch(stream_id):
        return None
    with reading() as session:
        row = stream_queries.one(session, kind, stream_id)
        outdated = row is not None and row.engine_version != VERSION
    if outdated:
        _fold_again(kind, stream_id)
    with reading() as session:
        row = stream_queries.one(session, kind, stream_id)
        if row is None:
            return None
        stored = [documents.event(event) for event in queries.events_of(session, kind, stream_id)]
        events, aside = (sorted(some, key=engine_log.total_key) for some in set_aside.split(session, stored))
        document = strict_json.read(row.document) if row.document else None
        return {"document": document, "broken": row.broken, "events": events, "set_aside": aside}


def all_of(kind: str) -> list[Document]:
    """Every document of a kind, latest first."""
    found: list[Document] = []
    more = True
    while more:
        part = page(kind, found[-1]["id"] if found else None, "", False, 500)
        found += part["documents"]
        more = part["more"]
    return found


def events_of(kind: str) -> list[Document]:
    """Every event of the streams of a kind, in the order in which they came."""
    with reading() as session:
        return [documents.event(row) for row in queries.events_of_kind(session, kind)]
