"""Rows as the documents that travel."""

import json
from collections.abc import Mapping
from contextlib import closing
from typing import Any, NamedTuple

from sqlalchemy import ScalarResult

from amberbench.store.models import BatchRow, EventRow

from . import clock
from .event_validation import MEMBERS

PAGE = 2 * 1024 * 1024
"""Bytes of JSON in one answer with events, at most."""
ENVELOPE = 700
"""Bytes of JSON that an event has around its body, at most."""


class NewEvents(NamedTuple):
    """What a push brought to streams of one kind: by stream id its new events as documents, the position of the first
    event of the push, and when the push came in (ms)."""

    by_id: Mapping[str, list[dict[str, Any]]]
    first: int
    received_ms: int


def event(row: EventRow) -> dict[str, Any]:
    """An event as the phone wrote it, with its position, when it was received and its flags."""
    more = json.loads(row.more) if row.more else {}
    members = {name: getattr(row, name) for name in MEMBERS}
    own = {"position": row.position, "received_ms": row.received_ms}
    document = more | as_written(members, json.loads(row.body)) | own
    return document | {"flags": flags(row.flags, document)}


def page(rows: ScalarResult[EventRow], room: int, most: int | None = None) -> tuple[list[EventRow], bool]:
    """The first of some events, as many as fit into `room` bytes of JSON, at least one; whether any is left."""
    taken: list[EventRow] = []
    with closing(rows):
        for row in rows:
            room -= len(row.body.encode()) + len((row.more or "").encode()) + ENVELOPE
            if taken and (room < 0 or len(taken) == most):
                return taken, True
            taken.append(row)
    return taken, False


def cursor_token(row: EventRow) -> str:
    """A token for the cursor at this event, made of its id and the time when the server stored it.

    A phone sends it with its next pull. If another token belongs to that position by then, the log is no longer the
    same: a database restored from a backup stores again what phones send it, possibly the same event at the same
    position, but at another time.
    """
    return f"{row.received_ms}-{row.id}"


def as_written(members: dict[str, Any], body: dict[str, Any]) -> dict[str, Any]:
    """An event as the phone wrote it; milliseconds without a ".0"."""
    at = {"at_ms": whole(members["at_ms"]), "offset_ms": whole(members["offset_ms"])}
    return members | at | {"body": body}


def flags(words: str, stored: Mapping[str, Any]) -> list[str]:
    """What the server noticed about an event: its words, and "ahead" for one that is set aside."""
    return (words.split(",") if words else []) + (["ahead"] if clock.is_ahead(stored) else [])


def summary(row: BatchRow) -> dict[str, Any]:
    """One line of the list of batches."""
    return {
        "batch_id": row.batch_id,
        "name": row.name,
        "kind": row.kind,
        "opened_at_ms": whole(row.opened_at_ms),
        "closed_at_ms": None if row.closed_at_ms is None else whole(row.closed_at_ms),
        "step": row.step,
        "pieces": row.pieces,
        "caramel_kg": row.caramel_kg,
        "good_kg": row.good_kg,
        "device_id": row.device_id,
        "events": row.events,
        "label": json.loads(row.label) if row.label else None,
    }


def whole(number: float) -> float:
    """A number without a ".0" it does not need."""
    return int(number) if number == int(number) else number
