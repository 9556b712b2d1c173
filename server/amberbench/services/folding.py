"""Folds the events of batches into their rows, and keeps the rows.

After a push each batch that it brought events for is folded once. If the push holds all events of the batch, they are
folded from memory; if its events come after all others, they are applied to the run that is kept; otherwise the whole
log of the batch is read and folded again. All three ways give the same row.
"""

import json
import logging
from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine import VERSION, catalogue
from amberbench.engine.batch import courses
from amberbench.engine.batch import label as batch_label
from amberbench.engine.batch import run as batch_run
from amberbench.engine.core import check
from amberbench.engine.core import log as bench
from amberbench.engine.core.problems import Problem
from amberbench.engine.exports.fields import SUMMARY
from amberbench.store import Unusable, queries, reading, writing
from amberbench.store.models import BatchRow, UnopenedRow

from . import clock, documents, set_aside, strict_json, tracing, unexpected_errors
from .documents import NewEvents

log = logging.getLogger(__name__)
Document = dict[str, Any]


def fold_new_events(session: Session, new: NewEvents) -> None:
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
                if not _try_incremental(session, batch_id, events, rows.get(batch_id), earlier.get(batch_id), errors)
            ]
    except Unusable:  # the database cannot take it now: nothing of the push is kept, and it comes again
        raise
    except Exception as error:  # one by one it harms no other batch
        errors.append(error)
        left = batch_ids
    if all([refold_batch(session, batch_id) for batch_id in left]):
        # A replay of the whole log works, so the mistake lies in folding only what is new; nothing has logged it yet.
        for missed in errors:
            unexpected_errors.record("a batch could not be folded without its whole log", missed)


def _try_incremental(
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
            _fold_first_push(session, batch_id, events)
        elif row is not None and earlier is not None and _can_append(row, earlier, events):
            _append_to_run(session, row, events)
        else:
            return False
    except Unusable:
        raise
    except Problem:  # `project` tells of a plan that is none
        return False
    except Exception as error:
        errors.append(error)
        return False
    return True


def _fold_first_push(session: Session, batch_id: str, events: list[Document]) -> None:
    """All there is of a batch came at once."""
    opening = opening_of(events)
    if opening is None:
        session.add(UnopenedRow(batch_id=batch_id))
    else:
        run = replayed(opening, events)
        session.add(row_of(opening, len(events), run))
        tracing.keep_batch(session, batch_id, run)


def _can_append(row: BatchRow, earlier: queries.EventCounts, events: list[Document]) -> bool:
    """Whether the new events come after all others in the order of the log, and none is taken back or set aside."""
    return (
        bool(row.run)
        and row.engine_version == VERSION
        and row.events == earlier.events
        and earlier.passed_over == 0
        and all(
            event["kind"] not in bench.BACK_AND_FORTH and bench.corrected_ms(event) > earlier.newest_ms
            for event in events
        )
    )


def _append_to_run(session: Session, row: BatchRow, events: list[Document]) -> None:
    run = json.loads(row.run or "")
    before = tracing.links_of_run(row.batch_id, run)
    for event in sorted(events, key=bench.order_key):
        run = batch_run.apply(run, event)
    for name, value in run_values(run).items():
        setattr(row, name, value)
    row.events += len(events)
    row.run = strict_json.write(run)
    tracing.keep_batch(session, row.batch_id, run, before)


def refold_batch(session: Session, batch_id: str) -> bool:
    """Folds a batch's events anew and keeps the result; False: a mistake of ours was in the way, and was told.

    A batch that nobody has opened yet waits for that event. Whatever goes wrong in folding stays here: the events are
    facts and must be kept.
    """
    rows = queries.events_of(session, "batch", batch_id)
    events, _ = set_aside.split(session, [documents.event(row) for row in rows])
    opening = opening_of(events)
    if opening is None:
        queries.mark_unopened(session, batch_id)
        return True
    queries.mark_opened(session, batch_id)
    try:
        with session.begin_nested():
            run = replayed(opening, events)
            session.merge(row_of(opening, len(rows), run))
            tracing.keep_batch(session, batch_id, run)
    except Unusable:  # the database cannot take it now: nothing of the push is kept, and it comes again
        raise
    except Problem as problem:
        log.warning("batch %s could not be folded: %s", batch_id, problem)
        session.merge(row_of(opening, len(rows), None))
    except Exception as error:
        error_id = unexpected_errors.record(f"batch {batch_id} could not be folded", error)
        broken = f"{type(error).__name__}: {str(error)[:200]} ({error_id})"
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
        "label": None,
    }


def run_values(run: Document) -> Document:
    """What a run says beyond that."""
    counted, planned = run["pieces"], run["planned"]
    pieces = planned["pieces"] if counted is None else counted
    weighed = planned["caramel_kg"] if run["weighed_kg"] is None else run["weighed_kg"]
    values = {
        "closed_at_ms": run["closed_at_ms"],
        "step": courses.open_step(run),
        "pieces": None if pieces is None else int(pieces),
        "caramel_kg": None if weighed is None else float(weighed),
        "good_kg": None if counted is None else counted * float(planned["piece_kg"]),
        "label": _label(run),
    }
    # Told apart from another batch of its name; an older engine's run kept the name of its plan.
    return values | {"name": _text(run["name"], 200)}


def _label(run: Document) -> str | None:
    """What its label says, as JSON; None where a broken plan says what no table of batches would take."""
    try:
        return strict_json.write(
            check.checked({"label": SUMMARY["label"]}, {"label": batch_label.of_run(run)})["label"]
        )
    except Problem:
        return None


def _text(value: Any, most: int) -> str:
    return value[:most] if isinstance(value, str) else ""


def fold_outdated() -> None:
    """Folds again the batches that another version of the engine folded, and those that were never folded.

    Each in a transaction of its own, so that no push waits for more than one of them.
    """
    with reading() as session:
        outdated = queries.batches_to_fold(session, VERSION)
    for batch_id in outdated:
        fold_again(batch_id)


def fold_again(batch_id: str) -> None:
    """Folds a batch that another version of the engine folded; the row stays as it is if the database is not free."""
    try:
        with writing() as session:
            row = queries.batch(session, batch_id)
            if row is None or row.engine_version != VERSION:  # another process may have been here first
                refold_batch(session, batch_id)
    except Unusable as error:  # tried again when it is read, and at the next start
        log.warning("batch %s could not be folded again: %s", batch_id, error)


def rebuild() -> int:
    """Makes all batches anew from the log; how many there are."""
    with writing() as session:
        queries.forget_batches(session)
        for batch_id in queries.batches_to_fold(session, VERSION):
            refold_batch(session, batch_id)
        return queries.count_batches(session)
