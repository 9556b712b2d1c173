"""Events taken in by the API in the largest groups, beside a bare route that parses and bulk-inserts the same."""

import http.client
import sys
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from e2e.server import Server

from .api import asked, connected
from .events import pushes
from .table import Row, speed_row
from .timing import compared, timed

GROUP = 500
GROUPS = 20
AT_LEAST = 0.15


class BareServer(Server):
    """The bare route in a process of its own."""

    def command(self) -> list[str]:
        return [sys.executable, "-m", "tests.measure.bare_server", str(self.database), str(self.port)]


def rows() -> Iterator[Row]:
    """One row: the speed of the server, which checks, numbers, answers and folds, as a share of the bare route's."""
    texts = pushes(GROUPS + 1, GROUP)
    with (
        TemporaryDirectory() as folder,
        TemporaryDirectory() as bare_folder,
        Server(Path(folder)) as server,
        BareServer(Path(bare_folder)) as bare_server,
        connected(server) as connection,
        connected(bare_server) as bare,
    ):
        pushed, kept = iter(texts), iter(texts)
        jobs = {"push": lambda: timed(lambda: push(connection, next(pushed)))}
        found = compared(jobs, lambda: timed(lambda: asked(bare, "POST", "/events", next(kept))), GROUPS)["push"]
    what = f"API: POST /api/events, {GROUPS * GROUP:,} in groups of {GROUP}"
    yield speed_row(what, found, "bare route", AT_LEAST)


def push(connection: http.client.HTTPConnection, text: str) -> None:
    """Sends a group; every event must be stored."""
    answers = asked(connection, "POST", "/api/events", text)["answers"]
    if [answer["result"] for answer in answers] != ["stored"] * GROUP:
        raise RuntimeError(f"not every event was stored: {answers[:3]}")
