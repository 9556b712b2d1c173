"""Takes events in, gives them out. Facts are appended: nothing here changes or deletes one."""

from typing import Any

from sqlalchemy.orm import Session

from amberbench.engine.problems import Problem
from amberbench.engine.shop import KIND as SHOP_SET
from amberbench.store import queries, reading, writing
from amberbench.store.models import EventRow

from . import batches, clock, documents, strict_json
from . import shop as shops
from .event_form import Event, event_of

Answer = dict[str, Any]


def push(events: list[Any], received_ms: int) -> list[Answer]:
    """Stores what is new and answers for each event, in the order given.

    "stored", "known" (the same event again) or "refused", with the code of the problem: malformed, too long, or
    `id_reused` when the id already stands for something else. What is stored is never overwritten.
    """
    read = [_read(event) for event in events]
    with writing() as session:
        shop = queries.shop(session)
        answers = _store(session, read, shop.id if shop else None, received_ms)
        touched = {one.members["batch_id"] for one in read if isinstance(one, Event)} - {None}
        for batch_id in sorted(touched):
            batches.project(session, batch_id)
        if any(isinstance(one, Event) and one.members["kind"] == SHOP_SET for one in read):
            shops.fold(session, received_ms)
    for index, event in enumerate(events):
        if isinstance(read[index], Problem):
            given = event.get("id") if isinstance(event, dict) else None
            answers[index]["id"] = given if isinstance(given, str) else None
    return answers


def pull(after: int, limit: int) -> dict[str, Any]:
    """Events after a position, at most `limit`: `{events, cursor, more}`; the cursor goes on."""
    with reading() as session:
        rows = queries.events_after(session, after, limit + 1)
        page = rows[:limit]
        return {
            "events": [documents.event(row) for row in page],
            "cursor": page[-1].position if page else after,
            "more": len(rows) > limit,
        }


def _read(document: Any) -> Event | Problem:
    try:
        return event_of(document)
    except Problem as problem:
        return problem


def _store(session: Session, read: list[Event | Problem], shop_id: str | None, received_ms: int) -> list[Answer]:
    known = queries.events_by_id(session, [one.id for one in read if isinstance(one, Event)])
    outcomes: list[tuple[str, EventRow | None, str | None, str | None]] = []
    for one in read:
        if isinstance(one, Problem):
            outcomes.append(("refused", None, one.code, one.field))
        elif one.id not in known:
            known[one.id] = _row(one, shop_id, received_ms)
            session.add(known[one.id])
            outcomes.append(("stored", known[one.id], None, None))
        elif _is_same(one, known[one.id]):
            outcomes.append(("known", known[one.id], None, None))
        else:
            outcomes.append(("refused", None, "id_reused", "id"))
    # Positions follow the order in which the phone sent them.
    session.flush()
    return [_answer(one, *outcome) for one, outcome in zip(read, outcomes, strict=True)]


def _row(event: Event, shop_id: str | None, received_ms: int) -> EventRow:
    flags = []
    if clock.is_from_the_future(event.members["at_ms"], event.members["offset_ms"], received_ms):
        flags.append("future")
    if event.members["shop_id"] != shop_id:
        flags.append("other_shop")
    return EventRow(**event.members, body=event.body, more=event.more, received_ms=received_ms, flags=",".join(flags))


def _is_same(event: Event, row: EventRow) -> bool:
    """The same members; bodies and extras compared as documents, for an app may write its names in another order."""
    return all(event.members[name] == getattr(row, name) for name in event.members) and (
        strict_json.read(event.body) == strict_json.read(row.body)
        and strict_json.read(event.more or "null") == strict_json.read(row.more or "null")
    )


def _answer(one: Event | Problem, result: str, row: EventRow | None, code: str | None, field: str | None) -> Answer:
    return {
        "id": one.id if isinstance(one, Event) else None,
        "result": result,
        "position": row.position if row else None,
        "flags": documents.flags(row) if row else [],
        "code": code,
        "field": field,
    }
