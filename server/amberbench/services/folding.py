"""Folds what a push brought: each batch once, from what is at hand where that comes to the same as its whole log."""

import json
from typing import Any

from sqlalchemy.exc import OperationalError
from sqlalchemy.orm import Session

from amberbench.engine import VERSION
from amberbench.engine.batch import log as bench
from amberbench.engine.batch import run as batch_run
from amberbench.engine.core.problems import Problem
from amberbench.store import queries
from amberbench.store.models import BatchRow, UnopenedRow

from . import batches, clock, mistakes, strict_json
from .documents import NewEvents

Document = dict[str, Any]


def take_in(session: Session, new: NewEvents) -> None:
    """Folds the batches that newly stored events belong to."""
    batch_ids = list(new.by_id)
    rows = queries.batches_with_runs(session, batch_ids)
    earlier = queries.counts_before(session, batch_ids, new.first, clock.AHEAD_MS)
    errors: list[Exception] = []
    try:
        with session.begin_nested():
            left = [
                batch_id
                for batch_id, events in new.by_id.items()
                if not _folded(session, batch_id, events, rows.get(batch_id), earlier.get(batch_id), errors)
            ]
    except OperationalError:  # the database cannot take it now: nothing of the push is kept, and it comes again
        raise
    except Exception as error:  # one by one it harms no other batch
        errors.append(error)
        left = batch_ids
    if all([batches.project(session, batch_id) for batch_id in left]):
        # A replay of the whole log works, so the mistake lies in folding only what is new; nothing has logged it yet.
        for missed in errors:
            mistakes.note("a batch could not be folded without its whole log", missed)


def _folded(
    session: Session,
    batch_id: str,
    events: list[Document],
    row: BatchRow | None,
    earlier: queries.EventCounts | None,
    errors: list[Exception],
) -> bool:
    """Whether the batch could be folded without reading its log; a mistake of ours on the way goes to `errors`."""
    if any(clock.is_ahead(event) for event in events):
        return False
    try:
        if row is None and earlier is None:
            _begin(session, batch_id, events)
        elif row is not None and earlier is not None and _goes_on(row, earlier, events):
            _go_on(row, events)
        else:
            return False
    except Problem:  # `project` tells of a plan that is none
        return False
    except Exception as error:
        errors.append(error)
        return False
    return True


def _begin(session: Session, batch_id: str, events: list[Document]) -> None:
    """All there is of a batch came at once."""
    opening = batches.opening_of(events)
    if opening is None:
        session.add(UnopenedRow(batch_id=batch_id))
    else:
        session.add(batches.row_of(opening, len(events), batches.replayed(opening, events)))


def _goes_on(row: BatchRow, earlier: queries.EventCounts, events: list[Document]) -> bool:
    """Whether the new events come after all others in the order of the log, and none is taken back or set aside."""
    return (
        bool(row.run)
        and row.engine_version == VERSION
        and row.events == earlier.events
        and earlier.passed_over == 0
        and all(event["kind"] != "undone" and bench.corrected_ms(event) > earlier.newest_ms for event in events)
    )


def _go_on(row: BatchRow, events: list[Document]) -> None:
    run = json.loads(row.run or "")
    for event in sorted(events, key=bench.order_key):
        run = batch_run.apply(run, event)
    for name, value in batches.run_values(run).items():
        setattr(row, name, value)
    row.events += len(events)
    row.run = strict_json.write(run)
