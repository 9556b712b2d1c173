"""Batches as they are kept: the list, and the record of one."""

from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine import VERSION
from amberbench.engine.core import log as bench
from amberbench.engine.core.problems import Problem
from amberbench.store import queries, reading
from amberbench.store.models import BatchRow, EventRow

from . import documents, folding, set_aside, strict_json
from .event_validation import NAME

Document = dict[str, Any]


def newest(limit: int, before: str | None) -> Document:
    """Summaries, newest first, at most `limit`, before the batch that the last page ended with. Raises Problem."""
    if before is not None and not NAME.fullmatch(before):
        raise Problem("before", "malformed", before[:60])
    with reading() as session:
        rows = queries.batches_before(session, before, limit + 1)
        return {"batches": [documents.summary(row) for row in rows[:limit]], "more": len(rows) > limit}


def record(batch_id: str) -> Document | None:
    """Everything about one batch: `{summary, plan, run, events, set_aside}`, in the order of the log; None if unknown.

    set_aside: events that the run does not know because their time lay more than a day ahead.
    """
    if not NAME.fullmatch(batch_id):
        return None
    with reading() as session:
        row = queries.batch(session, batch_id)
        if row is None or row.engine_version == VERSION:
            return _record(session, row) if row else None
    folding.fold_again(batch_id)
    with reading() as session:
        row = queries.batch(session, batch_id)
        return _record(session, row) if row else None


def _record(session: Session, row: BatchRow) -> Document:
    rows: list[EventRow] = queries.events_of(session, "batch", row.batch_id)
    events, aside = set_aside.split(session, [documents.event(one) for one in rows])
    events, aside = sorted(events, key=bench.order_key), sorted(aside, key=bench.order_key)
    opening = folding.opening_of(events)
    return {
        "summary": documents.summary(row),
        "plan": opening["body"]["plan"] if opening else None,
        "run": strict_json.read(row.run) if row.run else None,
        "broken": row.broken,
        "events": events,
        "set_aside": aside,
    }
