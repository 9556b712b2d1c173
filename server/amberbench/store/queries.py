"""Every query of the database, by name, and the writes that take a statement of their own.

The writes: `append` adds events, `mark_opened` and `mark_unopened` note whether a batch was opened, `forget_batches`
empties the tables that are made from events. Services add single rows by themselves.
"""

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from typing import Any, NamedTuple

from sqlalchemy import (
    ColumnElement,
    Connection,
    ScalarResult,
    Select,
    and_,
    case,
    delete,
    func,
    insert,
    or_,
    select,
    tuple_,
    union_all,
)
from sqlalchemy.orm import Session, undefer

from .models import BatchRow, ContributionRow, EventRow, LogRow, PhotoRow, ShopRow, UnopenedRow

# Rows with long bodies do not all have to be in memory.
FEW_AT_ONCE = {"yield_per": 50}


def log_id(session: Session) -> str:
    """Which log this is."""
    return session.scalars(select(LogRow.log_id)).one()


def events_by_id(session: Session, ids: Sequence[str]) -> dict[str, EventRow]:
    """Those events of some ids that are stored."""
    rows = session.scalars(select(EventRow).where(EventRow.id.in_(ids)))
    return {row.id: row for row in rows}


SHORT = 250
"""Events: a stream of fewer cannot be too large, so its bytes are not looked at."""


Stream = tuple[str, str]
"""Kind and id."""


def sizes_of_streams(session: Session, streams: Iterable[Stream]) -> dict[Stream, tuple[int, int]]:
    """How many events and, of a long one, characters of bodies some streams hold, by kind and id."""
    of_stream = (EventRow.stream_kind, EventRow.stream_id)
    among = tuple_(*of_stream).in_(list(streams))
    asked = select(*of_stream, func.count()).where(among).group_by(*of_stream)
    sizes = {(kind, stream_id): (number, 0) for kind, stream_id, number in session.execute(asked)}
    long = [stream for stream, (number, _) in sizes.items() if number > SHORT]
    if long:
        size = select(*of_stream, func.count(), func.sum(func.length(EventRow.body)))
        for kind, stream_id, *both in session.execute(size.where(tuple_(*of_stream).in_(long)).group_by(*of_stream)):
            sizes[kind, stream_id] = (int(both[0]), int(both[1]))
    return sizes


def append(session: Session, rows: Sequence[Mapping[str, Any]]) -> dict[str, int]:
    """Appends events given by their columns; the position of each by its id. Positions follow the order given."""
    if not rows:
        return {}
    session.connection().execute(insert(EventRow), rows)
    asked = select(EventRow.id, EventRow.position).where(EventRow.id.in_([row["id"] for row in rows]))
    return {event_id: position for event_id, position in session.execute(asked)}


def go_on_numbering(connection: Connection) -> None:
    """Numbers the next event after those that were written with their positions; SQLite does so by itself."""
    if connection.dialect.name == "postgresql":
        sequence = func.setval(func.pg_get_serial_sequence("event", "position"), func.max(EventRow.position))
        connection.execute(select(sequence))


def events_after(session: Session, position: int, limit: int) -> ScalarResult[EventRow]:
    """Events after a position, in the order they were stored, read as they are taken."""
    asked = select(EventRow).where(EventRow.position > position).order_by(EventRow.position).limit(limit)
    return session.scalars(asked, execution_options=FEW_AT_ONCE)


Positions = Select[int]
"""A question for the positions of events."""


def events_among(session: Session, positions: Sequence[Positions], after: int, upto: int) -> ScalarResult[EventRow]:
    """Events at positions that several questions give, after one and up to another, in their order, read as taken."""
    between = (EventRow.position > after, EventRow.position <= upto, EventRow.position.in_(union_all(*positions)))
    return session.scalars(select(EventRow).where(*between).order_by(EventRow.position), execution_options=FEW_AT_ONCE)


def positions_of(kind: str, stream_id: str) -> Positions:
    """Where the events of a stream are."""
    return select(EventRow.position).where(_in_stream(kind), EventRow.stream_id == stream_id)


def events_of(session: Session, kind: str, stream_id: str) -> list[EventRow]:
    """All events of a stream, in the order they were stored."""
    asked = select(EventRow).where(_in_stream(kind), EventRow.stream_id == stream_id).order_by(EventRow.position)
    return list(session.scalars(asked))


def events_of_kind(session: Session, kind: str) -> list[EventRow]:
    """All events of the streams of a kind, in the order they were stored."""
    return list(session.scalars(select(EventRow).where(_in_stream(kind)).order_by(EventRow.position)))


def positions_of_kind(kind: str) -> Positions:
    """Where the events of all streams of a kind are."""
    return select(EventRow.position).where(_in_stream(kind))


def positions_of_other_streams(kinds: Iterable[str]) -> list[Positions]:
    """Where the events of all streams are but those of some kinds."""
    bounds = [None, *sorted(kinds), None]
    # Stretch by stretch of the index: asked as "none of these", the database looks through the whole log.
    return [
        select(EventRow.position).where(
            *(() if low is None else (EventRow.stream_kind > low,)),
            *(() if high is None else (EventRow.stream_kind < high,)),
        )
        for low, high in pairwise(bounds)
    ]


def _in_stream(kind: str) -> ColumnElement[bool]:
    return EventRow.stream_kind == kind


class EventCounts(NamedTuple):
    """Of a batch: how many events it has, and the corrected time of the newest (ms).

    passed_over: how many of them undo another event, or are set aside because their time lay too far in the future.
    With any of these, the whole log has to be folded again.
    """

    events: int
    newest_ms: float
    passed_over: int


def counts_before(session: Session, batch_ids: Sequence[str], position: int, ahead_ms: int) -> dict[str, EventCounts]:
    """The counts of some batches before a position in the log; those without an event are missing.

    ahead_ms: an event further than this ahead of when it was received is set aside.
    """
    corrected_ms = EventRow.at_ms + EventRow.offset_ms
    is_ahead = corrected_ms > EventRow.received_ms + ahead_ms
    passed_over = func.sum(case((or_(EventRow.kind.in_(("undone", "redone")), is_ahead), 1), else_=0))
    asked = select(EventRow.stream_id, func.count(), func.max(corrected_ms), passed_over)
    asked = asked.where(_in_stream("batch"), EventRow.stream_id.in_(batch_ids), EventRow.position < position)
    return {batch_id: EventCounts(*counts) for batch_id, *counts in session.execute(asked.group_by(EventRow.stream_id))}


def openings_of(session: Session, batch_id: str) -> list[EventRow]:
    """The events that say they open a batch."""
    said = (_in_stream("batch"), EventRow.stream_id == batch_id, EventRow.kind == "batch_opened")
    return list(session.scalars(select(EventRow).where(*said)))


def positions_of_unclosed(_: Session, since: int | None) -> list[Positions]:
    """Where the events of every batch are that is not closed, or unopened, or was so at a position."""
    batch_ids = [select(BatchRow.batch_id).where(BatchRow.closed_at_ms.is_(None)), select(UnopenedRow.batch_id)]
    if since is not None:
        batch_ids.append(select(EventRow.stream_id).where(_in_stream("batch"), EventRow.position > since))
    return [select(EventRow.position).where(_in_stream("batch"), EventRow.stream_id.in_(union_all(*batch_ids)))]


def shops_edited(session: Session, kind: str, but: str) -> list[str]:
    """Shops that a device other than one has edited by events of a kind, that of the first such event first."""
    asked = select(EventRow.stream_id).where(_in_stream("shop"), EventRow.kind == kind, EventRow.device_id != but)
    return list(session.scalars(asked.group_by(EventRow.stream_id).order_by(func.min(EventRow.position))))


def last_event(session: Session) -> EventRow | None:
    """The newest event."""
    return session.scalar(select(EventRow).order_by(EventRow.position.desc()).limit(1))


def event_at(session: Session, position: int) -> EventRow | None:
    """The event at a position."""
    return session.scalar(select(EventRow).where(EventRow.position == position))


def batch(session: Session, batch_id: str) -> BatchRow | None:
    """One batch with its run."""
    asked = select(BatchRow).where(BatchRow.batch_id == batch_id).options(undefer(BatchRow.run))
    return session.scalar(asked)


def batches_with_runs(session: Session, batch_ids: Sequence[str]) -> dict[str, BatchRow]:
    """Those of some batches that have been folded, with their runs."""
    asked = select(BatchRow).where(BatchRow.batch_id.in_(batch_ids)).options(undefer(BatchRow.run))
    return {row.batch_id: row for row in session.scalars(asked)}


def batches_before(session: Session, batch_id: str | None, limit: int) -> Sequence[BatchRow]:
    """Batches opened before a given one, newest first."""
    asked = select(BatchRow).order_by(BatchRow.opened_at_ms.desc(), BatchRow.batch_id.desc()).limit(limit)
    if batch_id is not None:
        opened = select(BatchRow.opened_at_ms).where(BatchRow.batch_id == batch_id).scalar_subquery()
        same = and_(BatchRow.opened_at_ms == opened, BatchRow.batch_id < batch_id)
        asked = asked.where(or_(BatchRow.opened_at_ms < opened, same))
    return session.scalars(asked).all()


def batches_closed_since(session: Session, at_ms: float) -> Sequence[BatchRow]:
    """Batches closed at or after an instant, newest first, and those still open."""
    # Two questions of one index; asked as one with "or", SQLite looks through all batches.
    ids = select(BatchRow.batch_id)
    wanted = union_all(ids.where(BatchRow.closed_at_ms.is_(None)), ids.where(BatchRow.closed_at_ms >= at_ms))
    asked = select(BatchRow).where(BatchRow.batch_id.in_(wanted))
    return session.scalars(asked.order_by(BatchRow.opened_at_ms.desc(), BatchRow.batch_id.desc())).all()


def batches_closed_last(session: Session, limit: int, but: Sequence[str]) -> Sequence[BatchRow]:
    """The batches closed last but for some kinds, newest first, with their runs."""
    closed = select(BatchRow).where(BatchRow.closed_at_ms.is_not(None), BatchRow.kind.not_in(but))
    asked = closed.options(undefer(BatchRow.run))
    return session.scalars(asked.order_by(BatchRow.closed_at_ms.desc(), BatchRow.batch_id.desc()).limit(limit)).all()


def contributions(session: Session, batch_ids: Sequence[str]) -> dict[str, ContributionRow]:
    """What is kept of what some batches teach, by batch."""
    rows = session.scalars(select(ContributionRow).where(ContributionRow.batch_id.in_(batch_ids)))
    return {row.batch_id: row for row in rows}


def forget_contribution(session: Session, batch_id: str) -> None:
    """What a batch teaches is worked out anew."""
    session.execute(delete(ContributionRow).where(ContributionRow.batch_id == batch_id))


def batches_to_fold(session: Session, engine_version: str) -> Sequence[str]:
    """Batches the log speaks of that this engine has not folded, newest first."""
    folded = select(BatchRow.batch_id).where(BatchRow.engine_version == engine_version)
    asked = select(EventRow.stream_id).where(_in_stream("batch"), EventRow.stream_id.not_in(folded))
    return session.scalars(asked.distinct().order_by(EventRow.stream_id.desc())).all()


def mark_opened(session: Session, batch_id: str) -> None:
    """A batch no longer waits for its opening."""
    session.execute(delete(UnopenedRow).where(UnopenedRow.batch_id == batch_id))


def mark_unopened(session: Session, batch_id: str) -> None:
    """A batch waits for its opening: nothing of it can be folded."""
    session.execute(delete(BatchRow).where(BatchRow.batch_id == batch_id))
    session.merge(UnopenedRow(batch_id=batch_id))


def count_batches(session: Session) -> int:
    """How many batches have been folded."""
    return session.scalar(select(func.count()).select_from(BatchRow)) or 0


def forget_batches(session: Session) -> None:
    """Empties the projection; the log stays."""
    session.execute(delete(BatchRow))
    session.execute(delete(UnopenedRow))
    session.execute(delete(ContributionRow))


def photo(session: Session, photo_id: str) -> bytes | None:
    """The picture under an id."""
    return session.scalar(select(PhotoRow.content).where(PhotoRow.photo_id == photo_id))


def shop(session: Session) -> ShopRow | None:
    """The shop of this server."""
    return session.scalar(select(ShopRow).order_by(ShopRow.id).limit(1))
