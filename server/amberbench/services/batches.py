"""Batches: folded from their events, listed, shown."""

import logging
from typing import Any

from sqlalchemy.exc import OperationalError
from sqlalchemy.orm import Session

from amberbench.engine import VERSION, catalogue
from amberbench.engine.batch import courses
from amberbench.engine.batch import log as bench
from amberbench.engine.core.problems import Problem
from amberbench.store import queries, reading, writing
from amberbench.store.models import BatchRow, EventRow

from . import clock, documents, mistakes, strict_json
from .event_form import NAME

log = logging.getLogger(__name__)
Document = dict[str, Any]


def project(session: Session, batch_id: str) -> bool:
    """Folds a batch's events anew and keeps the result; False: a mistake of ours was in the way, and was told.

    A batch that nobody has opened yet waits for that event. Whatever goes wrong in folding stays here: the events are
    facts and must be kept.
    """
    rows = queries.events_of(session, "batch", batch_id)
    events, _ = clock.split([documents.event(row) for row in rows])
    opening = opening_of(events)
    if opening is None:
        queries.mark_unopened(session, batch_id)
        return True
    queries.mark_opened(session, batch_id)
    try:
        with session.begin_nested():
            session.merge(row_of(opening, len(rows), replayed(opening, events)))
    except OperationalError:  # the database cannot take it now: nothing of the push is kept, and it comes again
        raise
    except Problem as problem:
        log.warning("batch %s could not be folded: %s", batch_id, problem)
        session.merge(row_of(opening, len(rows), None))
    except Exception as error:
        name = mistakes.note(f"batch {batch_id} could not be folded", error)
        broken = f"{type(error).__name__}: {str(error)[:200]} ({name})"
        session.merge(row_of(opening, len(rows), None, broken))
        return False
    return True


def replayed(opening: Document, events: list[Document]) -> Document:
    """The run of a batch. Raises Problem when its plan is none."""
    request = {"plan": opening["body"]["plan"], "events": events}
    run: Document = catalogue.call("run.replay", request)["run"]
    return run


def row_of(opening: Document, events: int, run: Document | None, broken: str | None = None) -> BatchRow:
    """What is kept of a batch of so many events; without a run only what its opening says, and what broke."""
    values = _plain_values(opening) | (run_values(run) if run else {})
    text = strict_json.write(run) if run else None
    own = {"batch_id": opening["batch_id"], "engine_version": VERSION, "broken": broken}
    return BatchRow(events=events, run=text, **own, **values)


def opening_of(events: list[Document]) -> Document | None:
    """The event that opened a batch: the first of its kind, in the order of the log, that carries a plan."""
    openings = [
        event
        for event in events
        if event["kind"] == "batch_opened" and event["v"] == 1 and isinstance(event["body"].get("plan"), dict)
    ]
    return min(openings, key=bench.order_key, default=None)


def _plain_values(opening: Document) -> Document:
    """What can be said of a batch without the engine."""
    plan = opening["body"]["plan"]
    return {
        "name": _text(plan.get("name"), 200),
        "kind": _text(plan.get("kind"), 40),
        "opened_at_ms": bench.corrected_ms(opening),
        "closed_at_ms": None,
        "step": None,
        "pieces": None,
        "caramel_kg": None,
        "good_kg": None,
        "device_id": opening["device_id"],
    }


def run_values(run: Document) -> Document:
    """What a run says beyond that."""
    counted, planned = run["pieces"], run["planned"]
    pieces = planned["pieces"] if counted is None else counted
    weighed = planned["caramel_kg"] if run["weighed_kg"] is None else run["weighed_kg"]
    return {
        "closed_at_ms": run["closed_at_ms"],
        "step": courses.open_step(run),
        "pieces": None if pieces is None else int(pieces),
        "caramel_kg": None if weighed is None else float(weighed),
        "good_kg": None if counted is None else counted * float(planned["piece_kg"]),
    }


def _text(value: Any, most: int) -> str:
    return value[:most] if isinstance(value, str) else ""


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
        if row is None:
            return None
        rows: list[EventRow] = queries.events_of(session, "batch", batch_id)
        events, aside = clock.split(sorted((documents.event(one) for one in rows), key=bench.order_key))
        opening = opening_of(events)
        return {
            "summary": documents.summary(row),
            "plan": opening["body"]["plan"] if opening else None,
            "run": strict_json.read(row.run) if row.run else None,
            "broken": row.broken,
            "events": events,
            "set_aside": aside,
        }


def fold_outdated() -> None:
    """Folds what another engine folded, or none: a newer one may know more kinds of events."""
    with writing() as session:
        for batch_id in queries.batches_to_fold(session, VERSION):
            project(session, batch_id)


def rebuild() -> int:
    """Makes all batches anew from the log; how many there are."""
    with writing() as session:
        queries.forget_batches(session)
        for batch_id in queries.batches_to_fold(session, VERSION):
            project(session, batch_id)
        return queries.count_batches(session)
