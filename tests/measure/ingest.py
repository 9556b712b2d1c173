"""Events taken in by the API in groups as phones send them, beside a bare loop that parses and stores the same."""

import http.client
import json
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path
from tempfile import TemporaryDirectory

from e2e.server import Server
from tests.log import Phone

from .api import asked, connected
from .table import Row, time_row
from .timing import compared, timed

GROUP = 100  # what a phone sends at once, pwa/src/sync/exchange.ts
GROUPS = 25
MEMBERS = ("id", "v", "shop_id", "device_id", "seq", "at_ms", "offset_ms", "batch_id", "kind")


def rows() -> Iterator[Row]:
    """One row; the server stores, numbers, answers and folds each batch that was touched."""
    texts = groups(GROUPS + 1)
    with (
        TemporaryDirectory() as folder,
        Server(Path(folder)) as server,
        connected(server) as connection,
        closing(bare_store(Path(folder) / "bare.sqlite")) as bare,
    ):
        pushed, kept = iter(texts), iter(texts)
        jobs = {"push": lambda: timed(lambda: push(connection, next(pushed)))}
        found = compared(jobs, lambda: timed(lambda: keep(bare, next(kept))), GROUPS)["push"]
        stored = bare.execute("SELECT count(*) FROM events").fetchone()[0]
    yield time_row(f"API: POST /api/events, {GROUP} of {stored:,}", found, "json.loads + executemany")


def groups(count: int) -> list[str]:
    """So many groups of events of short whole batches, as the body of a push."""
    events = []
    while len(events) < count * GROUP:
        events += Phone().whole_batch()
    return [json.dumps({"events": events[start : start + GROUP]}) for start in range(0, count * GROUP, GROUP)]


def push(connection: http.client.HTTPConnection, text: str) -> None:
    """Sends a group; every event must be stored."""
    answers = asked(connection, "POST", "/api/events", text)["answers"]
    if [answer["result"] for answer in answers] != ["stored"] * GROUP:
        raise RuntimeError(f"not every event was stored: {answers[:3]}")


def bare_store(file: Path) -> sqlite3.Connection:
    """A table of events with the durability of the server's own."""
    bare = sqlite3.connect(file)
    bare.execute("PRAGMA journal_mode = WAL")
    bare.execute("PRAGMA synchronous = FULL")
    bare.execute(f"CREATE TABLE events (position INTEGER PRIMARY KEY, {', '.join(MEMBERS)}, body, UNIQUE (id))")
    return bare


def keep(bare: sqlite3.Connection, text: str) -> None:
    """Parses a group and stores it in one transaction."""
    events = json.loads(text)["events"]
    values = [(*(event[name] for name in MEMBERS), json.dumps(event["body"])) for event in events]
    marks = ", ".join("?" * (len(MEMBERS) + 1))
    with bare:
        bare.executemany(f"INSERT INTO events ({', '.join(MEMBERS)}, body) VALUES ({marks})", values)
