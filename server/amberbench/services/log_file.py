"""The whole log as lines of JSON, and a whole database in another: for who moves or reads it elsewhere."""

import base64
import binascii
from collections.abc import Iterable, Iterator
from typing import Any

from sqlalchemy import Connection, func, insert, select
from sqlalchemy.orm import Session

from amberbench import store
from amberbench.engine.core.problems import Problem
from amberbench.store import Unusable, queries, reading, writing
from amberbench.store.models import Base, EventRow, PhotoRow, ShopRow

from . import documents, streams, strict_json
from .event_validation import columns_of, parse_event

FORM = 1
FEW = {"yield_per": 100}
SERVERS = ("position", "received_ms", "flags")


def lines() -> Iterator[str]:
    """The log: a line that says what comes, then a line for each event in its order, then one for each photo."""
    with reading() as session:
        row = queries.shop(session)
        yield strict_json.write(
            {
                "amberbench_log": FORM,
                "log_id": queries.log_id(session),
                "shop_id": row.id if row else None,
                "changed_ms": row.changed_ms if row else None,
                "events": session.scalar(select(func.count()).select_from(EventRow)),
                "photos": session.scalar(select(func.count()).select_from(PhotoRow)),
            }
        )
        for event in session.scalars(select(EventRow).order_by(EventRow.position), execution_options=FEW):
            document = {name: value for name, value in documents.event(event).items() if name not in SERVERS}
            yield strict_json.write({"event": document, "received_ms": event.received_ms, "flags": event.flags})
        for photo in session.scalars(select(PhotoRow).order_by(PhotoRow.photo_id), execution_options=FEW):
            content = base64.b64encode(photo.content).decode()
            yield strict_json.write({"photo": photo.photo_id, "received_ms": photo.received_ms, "jpeg": content})


def take_in(given: Iterable[str]) -> tuple[int, int]:
    """Writes a log from its lines into an empty database, all of it or nothing: how many events and photos.

    Raises Unusable: `not_empty`, `no_log`, and `cut_short` when fewer lines come than the first one says.
    """
    rows = iter(given)
    with writing() as session:
        if queries.last_event(session) is not None:
            raise Unusable("not_empty")
        head = _line(next(rows, "{}"), 1)
        if head.get("amberbench_log") != FORM:
            raise Unusable("no_log", "1")
        counts = {"event": 0, "photo": 0}
        for number, line in enumerate(rows, start=2):
            counts[_take_in(session, _line(line, number), number)] += 1
        if (counts["event"], counts["photo"]) != (head["events"], head["photos"]):
            raise Unusable("cut_short")
        if head["shop_id"] is not None:
            session.add(ShopRow(id=head["shop_id"], document="{}", changed_ms=head["changed_ms"]))
    streams.rebuild()
    store.mark_begun()
    return counts["event"], counts["photo"]


def _line(line: str, number: int) -> dict[str, Any]:
    try:
        document = strict_json.read(line)
    except Problem as problem:
        raise Unusable("no_log", f"{number}, {problem.code}") from problem
    if not isinstance(document, dict):
        raise Unusable("no_log", number)
    return document


def _take_in(session: Session, line: dict[str, Any], number: int) -> str:
    """Writes one line; what it was."""
    try:
        if "event" in line:
            columns = columns_of(parse_event(line["event"]))
            session.execute(insert(EventRow), columns | {name: line[name] for name in ("received_ms", "flags")})
            return "event"
        content = base64.b64decode(line["jpeg"], validate=True)
        session.add(PhotoRow(photo_id=line["photo"], content=content, received_ms=line["received_ms"]))
        return "photo"
    except (Problem, KeyError, TypeError, binascii.Error) as error:
        raise Unusable("no_log", f"{number}: {error}") from error


def move_into(target: Connection) -> int:
    """Copies every table into an empty database of the same migration, log_id and positions included; how many rows.

    Raises Unusable `not_empty`.
    """
    rows = 0
    if target.scalar(select(func.count()).select_from(EventRow.__table__)):
        raise Unusable("not_empty")
    with reading() as session:
        for table in Base.metadata.sorted_tables:
            target.execute(table.delete())
            for some in session.execute(select(table), execution_options=FEW).mappings().partitions():
                target.execute(insert(table), [dict(row) for row in some])
                rows += len(some)
    queries.go_on_numbering(target)
    return rows
