"""Takes events in, gives them out. Facts are appended: nothing here changes or deletes one."""

import json
from collections.abc import Iterable
from itertools import islice
from typing import Any, NamedTuple

from flask import current_app
from sqlalchemy.orm import Session

from amberbench.engine.core.problems import Problem
from amberbench.store import phone_queries, queries, reading, writing
from amberbench.store.models import EventRow

from . import clock, documents, quotas, roles, streams
from .event_validation import MEMBERS, Event, columns_of, parse_event
from .in_groups import InGroups

Document = dict[str, Any]


class Outcome(NamedTuple):
    """What becomes of an event: "stored", "known" or "refused", with the problem's code and the member at fault."""

    result: str
    code: str | None = None
    field: str | None = None


class Sent(NamedTuple):
    """An event as it was given, what was read in it, when it came in (ms), and the device that sent it, where known."""

    given: Any
    read: Event | Problem
    received_ms: int
    by: str | None


class New(NamedTuple):
    """An event that is not in the log yet, when it came in (ms), and the device that sent it, where known."""

    event: Event
    received_ms: int
    by: str | None


def push(events: list[Any], received_ms: int, role: str = roles.OWNER, device_id: str | None = None) -> Document:
    """Stores what is new: `{log_id, answers}`, an answer for each event in the order given.

    "stored", "known" (the same event again) or "refused", with the code of the problem: malformed, too long, or
    `id_reused` when the id already stands for something else, `too_many` when its stream is full, `not_for_role` for
    what changes the shop unless an owner sends it (its phone keeps it, and offers it again in another role). What is
    stored is never overwritten. Raises quotas.TooMuch.

    device_id: of the paired phone that sends them; None: nobody is asked who it is.
    """
    read = [_read(event, role) for event in events]
    quotas.count_events([one for one in read if isinstance(one, Event)], received_ms)
    pushes: InGroups[list[Sent], Document] = current_app.extensions.setdefault("amberbench_pushes", InGroups(_push_all))
    given = zip(events, read, strict=True)
    return pushes.do([Sent(event, one, received_ms, device_id) for event, one in given])


def push_whole(events: list[Any], received_ms: int) -> None:
    """Stores what is new of some events, or nothing where one of them is refused. Raises Problem, quotas.TooMuch."""
    read = []
    for index, event in enumerate(events):
        try:
            read.append(parse_event(event))
        except Problem as problem:
            raise Problem(f"events[{index}].{problem.field}", problem.code, problem.given) from None
    quotas.count_events(read, received_ms)
    given = zip(events, read, strict=True)
    _push_all([[Sent(event, one, received_ms, None) for event, one in given]], is_whole=True)


def _push_all(pushes: list[list[Sent]], is_whole: bool = False) -> list[Document]:
    """Stores what is new in several pushes, in one transaction: the disk is waited for once, a batch is folded once.

    is_whole: one that is refused is a Problem, and nothing is stored.
    """
    sent = [one for push in pushes for one in push]
    with writing() as session:
        stored = queries.events_by_id(session, [one.read.id for one in sent if isinstance(one.read, Event)])
        new, outcomes = _compare(sent, stored.values())
        full = _beyond_their_stream(session, [one.event for one in new])
        new = [one for one in new if one.event.id not in full]
        outcomes = [
            Outcome("refused", "too_many", "stream") if isinstance(one.read, Event) and one.read.id in full else outcome
            for one, outcome in zip(sent, outcomes, strict=True)
        ]
        for index, outcome in enumerate(outcomes if is_whole else []):
            if outcome.code == "id_reused":
                raise Problem(f"events[{index}].id", "id_reused", sent[index].given["id"])
            if outcome.result == "refused":
                raise Problem(
                    f"events[{index}].stream", "stream_full", sent[index].given["stream"], high=quotas.MOST_IN_STREAM
                )
        shop = queries.shop(session)
        paired = phone_queries.paired_devices(session)
        rows = [_row(one, shop.id if shop else None, paired) for one in new]
        # Positions follow the order in which the phones sent them.
        positions = queries.append(session, rows)
        kept = {row.id: (row.position, documents.flags(row.flags, vars(row))) for row in stored.values()}
        kept |= {row["id"]: (positions[row["id"]], documents.flags(row["flags"], row)) for row in rows}
        streams.fold_new_events(session, _by_kind_of_stream(new, min(positions.values(), default=0)))
        log_id = queries.log_id(session)
    answers = iter([_answer(one.given, outcome, kept) for one, outcome in zip(sent, outcomes, strict=True)])
    return [{"log_id": log_id, "answers": list(islice(answers, len(push)))} for push in pushes]


def pull(after: int, limit: int, seen: str | None = None) -> Document:
    """Events after a position, at most `limit` and 2 MB: `{log_id, events, cursor, cursor_mark, more}`.

    seen: the mark of that position, as the phone got it. Raises Problem `other_log` when another one stands
    there, or none: the log was put back from a copy, and the phone must start again.
    """
    with reading() as session:
        if seen is not None:
            at_cursor = queries.event_at(session, after)
            if at_cursor is None or documents.cursor_token(at_cursor) != seen:
                raise Problem("seen", "other_log")
        page, more = documents.page(queries.events_after(session, after, limit + 1), documents.PAGE, limit)
        return {
            "log_id": queries.log_id(session),
            "events": [documents.event(row) for row in page],
            "cursor": page[-1].position if page else after,
            "cursor_mark": documents.cursor_token(page[-1]) if page else seen,
            "more": more,
        }


def _read(document: Any, role: str) -> Event | Problem:
    try:
        event = parse_event(document)
    except Problem as problem:
        return problem
    changes_shop = event.members["stream"].startswith("shop/")
    if changes_shop and not roles.may(role, roles.OWNER):
        return Problem("stream", "not_for_role", role, accepted=[roles.OWNER])
    return event


def _compare(sent: list[Sent], stored: Iterable[EventRow]) -> tuple[list[New], list[Outcome]]:
    """The events that are not in the log yet, and what becomes of each one that was sent."""
    kept = {row.id: _of_row(row) for row in stored}
    new: list[New] = []
    outcomes: list[Outcome] = []
    for _, one, received_ms, by in sent:
        if isinstance(one, Problem):
            outcomes.append(Outcome("refused", one.code, one.field))
        elif one.id not in kept:
            kept[one.id] = one
            new.append(New(one, received_ms, by))
            outcomes.append(Outcome("stored"))
        elif _is_same(one, kept[one.id]):
            outcomes.append(Outcome("known"))
        else:
            outcomes.append(Outcome("refused", "id_reused", "id"))
    return new, outcomes


def _beyond_their_stream(session: Session, new: list[Event]) -> set[str]:
    """The ids of new events that find no room in their streams."""
    streams_of: dict[str, queries.Stream] = {event.id: tuple(event.members["stream"].split("/")) for event in new}
    sizes = queries.sizes_of_streams(session, set(streams_of.values()))
    beyond = set()
    for event in new:
        number, size = sizes.get(streams_of[event.id], (0, 0))
        sizes[streams_of[event.id]] = number + 1, size + len(event.body)
        if quotas.is_full(number + 1, size + len(event.body)):
            beyond.add(event.id)
    return beyond


def _row(new: New, shop_id: str | None, paired: set[str]) -> Document:
    """The columns of an event; paired: the devices that are phones of the shop."""
    event, received_ms, by = new
    flags = []
    if clock.is_clock_doubtful(event.members["at_ms"], event.members["offset_ms"], received_ms):
        flags.append("future")
    if event.members["shop_id"] != shop_id:
        flags.append("other_shop")
    if by is not None and event.members["device_id"] in paired - {by}:
        flags.append("relayed")
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


def _by_kind_of_stream(events: list[New], first: int) -> dict[str, documents.NewEvents]:
    """New events as documents, by their streams."""
    found: dict[str, dict[str, list[Document]]] = {}
    for event, received_ms, _ in events:
        document = documents.as_written(event.members, event.content) | {"received_ms": received_ms}
        kind, stream_id = event.members["stream"].split("/")
        found.setdefault(kind, {}).setdefault(stream_id, []).append(document)
    newest_ms = max((one.received_ms for one in events), default=0)
    return {kind: documents.NewEvents(by_id, first, newest_ms) for kind, by_id in found.items()}


def _answer(given: Any, outcome: Outcome, kept: dict[str, tuple[int, list[str]]]) -> Document:
    """What became of one event as it was given; `kept`: position and flags of those the log holds, by id."""
    event_id: Any = given.get("id") if isinstance(given, dict) else None
    position, flags = (None, []) if outcome.result == "refused" else kept[event_id]
    return {
        "id": event_id if isinstance(event_id, str) else None,
        "result": outcome.result,
        "position": position,
        "flags": flags,
        "code": outcome.code,
        "field": outcome.field,
    }
