"""The queries of lots, orders and boxes packed: their documents, and the events a phone starts from."""

from collections.abc import Sequence

from sqlalchemy import and_, delete, func, or_, select
from sqlalchemy.orm import Session

from .models import EventRow, StreamDocumentRow
from .queries import Positions

Row = StreamDocumentRow
TAKEN_BACK_MS = -1.0
"""When something is of which all that was told is taken back: it is kept, and stands on no list."""


def one(session: Session, kind: str, stream_id: str) -> StreamDocumentRow | None:
    """The document of one stream."""
    return session.get(Row, (kind, stream_id))


def before(
    session: Session, kind: str, last_id: str | None, words: Sequence[str], only_open: bool, limit: int
) -> Sequence[StreamDocumentRow]:
    """Documents of a kind before the one a page ended with, those of the latest time first, that hold all of some
    words."""
    is_listed = and_(Row.kind == kind, Row.at_ms > TAKEN_BACK_MS)
    asked = select(Row).where(is_listed, *(Row.search.contains(word, autoescape=True) for word in words))
    if only_open:
        asked = asked.where(Row.closed_ms.is_(None))
    if last_id is not None:
        at_ms = select(Row.at_ms).where(Row.kind == kind, Row.id == last_id).scalar_subquery()
        asked = asked.where(or_(Row.at_ms < at_ms, and_(Row.at_ms == at_ms, Row.id < last_id)))
    return session.scalars(asked.order_by(Row.at_ms.desc(), Row.id.desc()).limit(limit)).all()


def positions_of_recent(kind: str, open_ms: int, closed_ms: int) -> list[Positions]:
    """Where the events are of the streams of a kind that are open and so long before the newest event of all at most,
    or closed so long before it."""
    newest_ms = select(EventRow.received_ms).order_by(EventRow.position.desc()).limit(1).scalar_subquery()
    is_open = and_(Row.closed_ms.is_(None), Row.at_ms >= newest_ms - open_ms)
    wanted = or_(is_open, Row.closed_ms >= newest_ms - closed_ms)
    ids = select(Row.id).where(Row.kind == kind, wanted)
    return [select(EventRow.position).where(EventRow.stream_kind == kind, EventRow.stream_id.in_(ids))]


def ids_to_fold(session: Session, kind: str, engine_version: str) -> Sequence[str]:
    """Streams of a kind that this engine has not folded."""
    folded = select(Row.id).where(Row.kind == kind, Row.engine_version == engine_version)
    asked = select(EventRow.stream_id).where(EventRow.stream_kind == kind, EventRow.stream_id.not_in(folded))
    return session.scalars(asked.distinct().order_by(EventRow.stream_id)).all()


def forget(session: Session, kind: str) -> None:
    """Empties the projection of a kind; the log stays."""
    session.execute(delete(Row).where(Row.kind == kind))


def count(session: Session, kind: str) -> int:
    """How many documents of a kind there are."""
    return session.scalar(select(func.count()).select_from(Row).where(Row.kind == kind)) or 0
