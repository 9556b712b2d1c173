"""Plans by the API beside a trivial route, on a real server over one connection that is kept."""

import http.client
import json
from collections.abc import Iterator
from contextlib import AbstractContextManager, closing
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from e2e.server import Server
from tests.bench import planned_slab

from .table import Row, time_row
from .timing import Job, compared, timed

ROUNDS = 60


def rows() -> Iterator[Row]:
    """One row for each plan."""
    plan = planned_slab()
    requests = {
        "slab": plan["request"],
        "melt": plan["reply"]["melt_request"],
        "cooling": plan["reply"]["cool_request"],
    }
    with TemporaryDirectory() as folder, Server(Path(folder)) as server, connected(server) as connection:
        jobs = {name: _job(connection, name, json.dumps(request)) for name, request in requests.items()}
        trivial = _job(connection, "health")
        for name, found in compared(jobs, trivial, ROUNDS).items():
            yield time_row(f"API: POST /api/plans/{name}", found, "GET /api/health")


def connected(server: Server) -> AbstractContextManager[http.client.HTTPConnection]:
    """One connection to a server, closed with the block."""
    return closing(http.client.HTTPConnection("127.0.0.1", server.port, timeout=60))


def _job(connection: http.client.HTTPConnection, name: str, text: str | None = None) -> Job:
    method, path = ("POST", f"/api/plans/{name}") if text else ("GET", f"/api/{name}")
    return lambda: timed(lambda: asked(connection, method, path, text))


def asked(connection: http.client.HTTPConnection, method: str, path: str, text: str | None = None) -> Any:
    """The answer to one request; anything but 200 is an error."""
    headers = {"Content-Type": "application/json"} if text else {}
    connection.request(method, path, text.encode() if text else None, headers)
    answer = connection.getresponse()
    body = answer.read()
    if answer.status != 200:
        raise RuntimeError(f"{method} {path}: {answer.status} {body[:200]!r}")
    return json.loads(body)
