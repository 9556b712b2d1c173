"""Events set aside because their time lay too far ahead, let in or kept out by hand.

Either is a fact in a stream of its own, `set_aside/<id of the event>`: `let_in {at_ms}`, the time at which it counts,
or `kept_out {}`. Of several the last in the order of the log holds.
"""

from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine.core import check
from amberbench.engine.core import log as engine_log
from amberbench.store import queries

from . import clock, documents

STREAM = "set_aside"
Document = dict[str, Any]


def split(session: Session, events: list[Document]) -> tuple[list[Document], list[Document]]:
    """Stored events that folds take, those let in at the time they count; and those set aside, each in their order."""
    taken: list[Document] = []
    aside: list[Document] = []
    for event in events:
        at_ms = _let_in_ms(session, event["id"]) if clock.is_ahead(event) else None
        if at_ms is not None:
            taken.append(event | {"at_ms": at_ms, "offset_ms": 0})
        else:
            (aside if clock.is_ahead(event) else taken).append(event)
    return taken, aside


def _let_in_ms(session: Session, event_id: str) -> float | None:
    """The time (ms) at which an event that is set aside counts; None: it does not."""
    rows = [documents.event(row) for row in queries.events_of(session, STREAM, event_id)]
    said = sorted((one for one in rows if not clock.is_ahead(one)), key=engine_log.order_key)
    if not said or said[-1]["kind"] != "let_in":
        return None
    at_ms, newest_ms = said[-1]["body"].get("at_ms"), said[-1]["received_ms"] + clock.AHEAD_MS
    return at_ms if check.is_number(at_ms) and 0 <= at_ms <= newest_ms else None
