"""Takes events in, gives them out. Facts are appended: nothing here changes or deletes one."""

import json
from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine.core.problems import Problem
from amberbench.store import queries, reading, writing
from amberbench.store.models import EventRow

from . import clock, documents, streams
from .event_validation import MEMBERS, Event, columns_of, parse_event

Answer = dict[str, Any]


def push(events: list[Any], received_ms: int) -> dict[str, Any]:
    """Stores what is new: `{log_id, answers}`, an answer for each event in the order given.

    "stored", "known" (the same event again) or "refused", with the code of the problem: malformed, too long, or
    `id_reused` when the id already stands for something else. What is stored is never overwritten.
    """
    read = [_read(event) for event in events]
    with writing() as session:
        new, answers = _store(session, read, received_ms)
        first = min((one["position"] for one in answers if one["result"] == "stored"), default=0)
        streams.fold_new_events(session, _by_kind_of_stream(new, first, received_ms))
        log_id = queries.log_id(session)
    for index, event in enumerate(events):
        if isinstance(read[index], Problem):
            given = event.get("id") if isinstance(event, dict) else None
            answers[index]["id"] = given if isinstance(given, str) else None
    return {"log_id": log_id, "answers": answers}


def pull(after: int, limit: int, seen: str | None = None) -> dict[str, Any]:
    """Events after a position, at most `limit`: `{log_id, events, cursor, cursor_mark, more}`; the cursor goes on.

    seen: the mark of that position, as the phone got it. Raises Problem `other_log` when another one stands
    there, or none: the log was put back from a copy, and the phone must start again.
    """
    with reading() as session:
        if seen is not None:
            at_cursor = queries.event_at(session, after)
            if at_cursor is None or documents.cursor_token(at_cursor) != seen:
                raise Problem("seen", "other_log")
        rows = queries.events_after(session, after, limit + 1)
        page = rows[:limit]
        return {
            "log_id": queries.log_id(session),
            "events": [documents.event(row) for row in page],
            "cursor": page[-1].position if page else after,
            "cursor_mark": documents.cursor_token(page[-1]) if page else seen,
            "more": len(rows) > limit,
        }


def _read(document: Any) -> Event | Problem:
    try:
        return parse_event(document)
    except Problem as problem:
        return problem


def _store(session: Session, read: list[Event | Problem], received_ms: int) -> tuple[list[Event], list[Answer]]:
    """Those that are new, and an answer for each."""
    stored = queries.events_by_id(session, [one.id for one in read if isinstance(one, Event)])
    kept = {row.id: _of_row(row) for row in stored.values()}
    new: list[Event] = []
    outcomes: list[tuple[str, str | None, str | None]] = []
    for one in read:
        if isinstance(one, Problem):
            outcomes.append(("refused", one.code, one.field))
        elif one.id not in kept:
            kept[one.id] = one
            new.append(one)
            outcomes.append(("stored", None, None))
        elif _is_same(one, kept[one.id]):
            outcomes.append(("known", None, None))
        else:
            outcomes.append(("refused", "id_reused", "id"))
    shop = queries.shop(session)
    rows = [_row(one, shop.id if shop else None, received_ms) for one in new]
    # Positions follow the order in which the phone sent them.
    positions = queries.append(session, rows)
    known = {row.id: (row.position, documents.flags(row.flags, vars(row))) for row in stored.values()}
    known |= {row["id"]: (positions[row["id"]], documents.flags(row["flags"], row)) for row in rows}
    return new, [_answer(one, known, *outcome) for one, outcome in zip(read, outcomes, strict=True)]


def _row(event: Event, shop_id: str | None, received_ms: int) -> dict[str, Any]:
    """The columns of an event."""
    flags = []
    if clock.is_from_the_future(event.members["at_ms"], event.members["offset_ms"], received_ms):
        flags.append("future")
    if event.members["shop_id"] != shop_id:
        flags.append("other_shop")
    return columns_of(event) | {"received_ms": received_ms, "flags": ",".join(flags)}


def _of_row(row: EventRow) -> Event:
    """A stored event, to compare with."""
    return Event({name: getattr(row, name) for name in MEMBERS}, json.loads(row.body), row.body, row.more)


def _is_same(event: Event, kept: Event) -> bool:
    """The same members; bodies and extras compared as documents, for an app may write its names in another order."""
    return (
        event.members == kept.members
        and event.content == kept.content
        and json.loads(event.more or "null") == json.loads(kept.more or "null")
    )


def _by_kind_of_stream(events: list[Event], first: int, received_ms: int) -> dict[str, documents.NewEvents]:
    """New events as documents, by their streams."""
    found: dict[str, dict[str, list[dict[str, Any]]]] = {}
    for event in events:
        document = documents.as_written(event.members, event.content) | {"received_ms": received_ms}
        kind, stream_id = event.members["stream"].split("/")
        found.setdefault(kind, {}).setdefault(stream_id, []).append(document)
    return {kind: documents.NewEvents(by_id, first, received_ms) for kind, by_id in found.items()}


def _answer(
    one: Event | Problem, known: dict[str, tuple[int, list[str]]], result: str, code: str | None, field: str | None
) -> Answer:
    event_id = one.id if isinstance(one, Event) else None
    position, flags = (None, []) if event_id is None or result == "refused" else known[event_id]
    return {
        "id": event_id,
        "result": result,
        "position": position,
        "flags": flags,
        "code": code,
        "field": field,
    }
