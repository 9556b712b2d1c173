"""What an event must look like to be kept, and what of it is kept."""

import re
from dataclasses import dataclass
from typing import Any

from amberbench.engine.core import check
from amberbench.engine.core import field_kinds as kinds
from amberbench.engine.core.problems import Problem

from . import strict_json

MOST_BODY = 256 * 1024
"""Bytes of a body as JSON. A batch_opened carries a whole plan with its cooling curve: some 40 kB."""

UUID_7 = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
NAME = re.compile(r"[A-Za-z0-9_.:-]{1,64}")
KIND = re.compile(r"[a-z][a-z0-9_]{0,39}")
STREAM = re.compile(r"[a-z][a-z0-9_]{0,19}/[A-Za-z0-9_.:-]{1,64}")

EVENT_FIELDS = {
    "id": kinds.text(36, "UUIDv7 in small letters (RFC 9562), made on the phone"),
    "v": kinds.integer(1, 1000, "version of the form of the event"),
    "shop_id": kinds.text(64, "the shop"),
    "device_id": kinds.text(64, "the phone"),
    "seq": kinds.integer(0, 1e12, "the phone's own count"),
    "at_ms": kinds.number("ms", 0, 1e14, "the phone's clock, milliseconds since 1970"),
    "offset_ms": kinds.number("ms", -1e14, 1e14, "the phone's estimate of server minus phone clock"),
    "stream": kinds.text(85, "what it belongs to: <kind>/<id>; null: by batch_id and shop_id", default=None),
    "batch_id": kinds.text(64, "the batch, or null", default=None),
    "kind": kinds.text(40, "what happened"),
    "body": kinds.document("what belongs to it: a record", unread=True),
}
OF_THE_SERVER = {"position", "received_ms", "flags"}
"""What the server adds when it gives an event out: not the phone's to say."""
MEMBERS = tuple(name for name in EVENT_FIELDS if name != "body")
PATTERNS = {"id": UUID_7, "shop_id": NAME, "device_id": NAME, "stream": STREAM, "batch_id": NAME, "kind": KIND}


@dataclass(frozen=True)
class Event:
    """A well-formed event: its members, its body, and as JSON text the body and what a newer app put beside them."""

    members: dict[str, Any]
    content: dict[str, Any]
    body: str
    more: str | None

    @property
    def id(self) -> str:
        """Its own id."""
        return str(self.members["id"])


def columns_of(event: Event) -> dict[str, Any]:
    """What of an event stands in columns of its own, by their names."""
    members = {name: value for name, value in event.members.items() if name != "stream"}
    kind, stream_id = event.members["stream"].split("/")
    return members | {"stream_kind": kind, "stream_id": stream_id, "body": event.body, "more": event.more}


def _put_into_stream(members: dict[str, Any]) -> None:
    """Names the stream of an event that an older app wrote, and the batch of one that names only its stream.

    Raises Problem `malformed` (stream) when it belongs to another batch or shop than the event says.
    """
    if members["stream"] is None:
        batch_id = members["batch_id"]
        members["stream"] = f"shop/{members['shop_id']}" if batch_id is None else f"batch/{batch_id}"
    kind, stream_id = members["stream"].split("/")
    if kind == "batch" and members["batch_id"] is None:
        members["batch_id"] = stream_id
    belongs_to = {"batch": members["batch_id"], "shop": members["shop_id"]}.get(kind, stream_id)
    if belongs_to != stream_id or (kind != "batch" and members["batch_id"] is not None):
        raise Problem("stream", "malformed", members["stream"])


def parse_event(document: Any) -> Event:
    """The event in a document.

    Raises Problem for a member that is missing or malformed, and `too_long` for a body above 256 kB. Unknown kinds,
    newer versions and members we do not know are well-formed: the server may learn them later.
    """
    if type(document) is not dict:
        raise Problem("event", "not_a_record")
    members = check.checked(EVENT_FIELDS, {name: document[name] for name in EVENT_FIELDS if name in document})
    for name, pattern in PATTERNS.items():
        if members[name] is not None and not pattern.fullmatch(members[name]):
            raise Problem(name, "malformed", members[name])
    _put_into_stream(members)
    if type(members["body"]) is not dict:
        raise Problem("body", "not_a_record")
    content = members.pop("body")
    body = strict_json.write(content)
    more = {name: document[name] for name in document if name not in EVENT_FIELDS.keys() | OF_THE_SERVER}
    kept_more = strict_json.write(more) if more else None
    length = len(body.encode()) + len((kept_more or "").encode())
    if length > MOST_BODY:
        raise Problem("body", "too_long", length, high=MOST_BODY)
    return Event(members, content, body, kept_more)
