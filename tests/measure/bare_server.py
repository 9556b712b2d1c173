"""A bare route that parses a group of events and bulk-inserts it: what `POST /api/events` is measured beside.

`python -m tests.measure.bare_server DATABASE PORT`: the same web server, framework, table, indexes and durability as
Amberbench's own; no checks, no numbers given back, no folding.
"""

import json
import sqlite3
import sys
import threading
from pathlib import Path

from flask import Flask, Response, request

from amberbench import serving, store
from amberbench.app import create_app
from amberbench.services.event_validation import MEMBERS

# A stream has two columns; here all events are of batches.
PLAIN = [name for name in MEMBERS if name != "stream"]
INSERT = (
    f"INSERT INTO event ({', '.join(PLAIN)}, stream_kind, stream_id, body, received_ms, flags)"
    f" VALUES ({', '.join('?' * len(PLAIN))}, 'batch', ?, ?, 0, '')"
)
_own = threading.local()


def bare_app(file: Path) -> Flask:
    """The application with its one route, on a database file of our own tables."""
    with create_app({"SQLALCHEMY_DATABASE_URI": f"sqlite:///{file}"}).app_context():
        store.upgrade()
    app = Flask("bare")

    @app.post("/events")
    def keep() -> Response:
        events = json.loads(request.get_data())["events"]
        values = [(*(event[name] for name in PLAIN), event["batch_id"], json.dumps(event["body"])) for event in events]
        with _connection(file) as connection:
            connection.executemany(INSERT, values)
        return Response(json.dumps({"stored": len(values)}), mimetype="application/json")

    @app.get("/api/health")
    def health() -> Response:
        return Response("{}", mimetype="application/json")

    return app


def _connection(file: Path) -> sqlite3.Connection:
    """The connection of this thread, with the server's own settings."""
    if not hasattr(_own, "connection"):
        _own.connection = sqlite3.connect(file)
        for pragma in ("busy_timeout = 10000", "journal_mode = WAL", "foreign_keys = ON", "synchronous = FULL"):
            _own.connection.execute(f"PRAGMA {pragma}")
    return _own.connection


if __name__ == "__main__":
    serving.listen([serving.Listener(bare_app(Path(sys.argv[1])), "127.0.0.1", int(sys.argv[2]))], lambda: None)
