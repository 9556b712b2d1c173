"""The same questions asked of a server with many events stored and of one with few."""

import json
import sqlite3
import time
from collections.abc import Iterator
from contextlib import ExitStack, closing
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from amberbench.services import folding
from amberbench.services.event_validation import MEMBERS
from e2e.server import Server
from tests.log import uuid7

from .api import asked, connected
from .events import DEVICES, usual_slab
from .table import Row, growth_row
from .timing import Job, compared, timed

FEW, MANY = 3_000, 300_000
ROUNDS = 25
AT_MOST = 2.0
DAY_MS = 24 * 3600 * 1000
EVENT = [*(name for name in MEMBERS if name != "stream"), "stream_kind", "stream_id", "body", "received_ms", "flags"]


def rows() -> Iterator[Row]:
    """A row for each question; the newest slabs are still running, as in a shop at work."""
    with ExitStack() as stack:
        few, many = (_Shop(stack, size) for size in (FEW, MANY))
        jobs = {name: many.job(path) for name, path in many.paths.items()}
        for name, job in jobs.items():
            found = compared({name: job}, few.job(few.paths[name]), ROUNDS)[name]
            yield growth_row(f"API: {name}, {MANY:,} events stored", found, f"{FEW:,} stored", AT_MOST)


class _Shop:
    """A server whose log holds so many events of usual slabs."""

    def __init__(self, stack: ExitStack, size: int) -> None:
        self.server = Server(Path(stack.enter_context(TemporaryDirectory())))
        with self.server:
            pass  # its tables are made
        self.batch_id = fill(self.server.database, size)
        stack.enter_context(self.server)
        self.connection = stack.enter_context(connected(self.server))
        self.paths = {
            "GET /api/batches?limit=50": "/api/batches?limit=50",
            "GET /api/batches/<id>": f"/api/batches/{self.batch_id}",
            "GET /api/events, 50 in the middle": f"/api/events?after={size // 2}&limit=50",
            "GET /api/snapshot": "/api/snapshot",
        }

    def job(self, path: str) -> Job:
        return lambda: timed(lambda: asked(self.connection, "GET", path))


def fill(file: Path, size: int) -> str:
    """Writes so many events and their folded batches straight into the tables: one slab a day up to now, the last of
    them unfinished. Returns the id of a batch in the middle.
    """
    slab = usual_slab()
    count = -(-size // len(slab))
    batch_ids = [uuid7() for _ in range(count)]
    first_ms = time.time_ns() // 1_000_000 - count * DAY_MS - slab[0]["at_ms"]
    with closing(sqlite3.connect(file)) as connection, connection:
        connection.execute("PRAGMA synchronous = OFF")
        connection.executemany(_insert("event", EVENT), _events(batch_ids, first_ms, size))
        whole = _batch(slab)
        rows = [_moved(whole, batch_id, first_ms + day * DAY_MS) for day, batch_id in enumerate(batch_ids[:-1])]
        last = _batch(slab[: size - len(slab) * (count - 1)])
        rows.append(_moved(last, batch_ids[-1], first_ms + (count - 1) * DAY_MS))
        connection.executemany(_insert("batch", list(whole)), [tuple(row.values()) for row in rows])
    return batch_ids[count // 2]


def _insert(table: str, columns: list[str]) -> str:
    return f"INSERT INTO {table} ({', '.join(columns)}) VALUES ({', '.join('?' * len(columns))})"


def _events(batch_ids: list[str], first_ms: float, size: int) -> Iterator[tuple[Any, ...]]:
    """The columns of `size` events."""
    bodies = [json.dumps(event["body"], separators=(",", ":")) for event in usual_slab()]
    for number in range(size):
        day, step = divmod(number, len(bodies))
        told = usual_slab()[step]
        at_ms = told["at_ms"] + first_ms + day * DAY_MS
        device_id = DEVICES[day % len(DEVICES)]
        own = (
            uuid7(at_ms),
            1,
            "demo-shop",
            device_id,
            number,
            at_ms,
            -40.5,
            batch_ids[day],
            told["kind"],
            "batch",
            batch_ids[day],
        )
        yield *own, bodies[step], int(at_ms), ""


def _batch(events: list[dict[str, Any]]) -> dict[str, Any]:
    """The columns of a batch."""
    row = folding.row_of(events[0], len(events), folding.replayed(events[0], events))
    return {column.name: getattr(row, column.name) for column in row.__table__.columns}


def _moved(row: dict[str, Any], batch_id: str, by_ms: float) -> dict[str, Any]:
    closed_ms = row["closed_at_ms"]
    closed = {"closed_at_ms": None if closed_ms is None else closed_ms + by_ms}
    return row | {"batch_id": batch_id, "opened_at_ms": row["opened_at_ms"] + by_ms} | closed
