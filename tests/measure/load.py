"""Many phones that write and push at the same time, as the app does: what waits goes in one push, at most 100 events.

`python -m tests.measure.load --rate 20 --seconds 60` asks one server; --database names another one than a SQLite file,
--checkout the folder of an earlier version, which is then served instead (by this Python).
"""

import argparse
import http.client
import json
import threading
import time
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

from e2e.server import Server

from .events import WritingPhone
from .ingest import BareServer
from .table import Row, time_row
from .timing import Compared

PHONES = 50
GROUP = 100
SHORT_S = 10.0
RAMP_S = 2.0
MOST_S = 0.3


@dataclass
class Load:
    """What came of it: how long each push took (s), events stored, what went wrong, and the time from first to last."""

    pushes_s: list[float] = field(default_factory=list)
    stored: list[str] = field(default_factory=list)
    errors: list[str] = field(default_factory=list)
    lost: int = 0
    lasted_s: float = 0.0

    def percentile_s(self, share: float) -> float:
        """The duration that such a share of the pushes stayed within."""
        return sorted(self.pushes_s)[min(int(share * len(self.pushes_s)), len(self.pushes_s) - 1)]

    @property
    def events_per_s(self) -> float:
        return len(self.stored) / self.lasted_s

    def __str__(self) -> str:
        p50, p95, worst = (1000.0 * self.percentile_s(share) for share in (0.5, 0.95, 1.0))
        return (
            f"{self.events_per_s:.0f} events/s, {len(self.stored)} stored, {len(self.pushes_s)} pushes,"
            f" p50 {p50:.0f}, p95 {p95:.0f}, worst {worst:.0f} ms, {len(self.errors)} errors, {self.lost} lost"
        )


class Phone:
    """Events that come at a steady rate, and a connection over which they are pushed."""

    def __init__(self, number: int, rate: float, seconds: float, group: int) -> None:
        writing, self.events = WritingPhone(f"phone-{number}"), list[tuple[str, str]]()
        while len(self.events) < rate * seconds:
            self.events += [(one["id"], json.dumps(one, separators=(",", ":"))) for one in writing.next_round()]
        del self.events[int(rate * seconds) :]
        # Not all open their first batches in the same instant.
        self.rate, self.begins_s, self.group = rate, RAMP_S * number / PHONES, group

    def pushes(self, port: int, path: str, began: float, load: Load) -> None:
        """Tells the events as their time comes, until all are stored or a push failed."""
        connection = http.client.HTTPConnection("127.0.0.1", port, timeout=60)
        sent = 0
        while sent < len(self.events):
            due = int((time.monotonic() - began - self.begins_s) * self.rate) + 1
            if due <= sent:
                time.sleep(max(began + self.begins_s + sent / self.rate - time.monotonic(), 0.0))
                continue
            group = self.events[sent : min(due, sent + self.group)]
            started = time.monotonic()
            try:
                body = f'{{"events":[{",".join(text for _, text in group)}]}}'
                connection.request("POST", path, body.encode(), {"Content-Type": "application/json"})
                answer = connection.getresponse()
                said = answer.read()
                if answer.status != 200:
                    raise RuntimeError(f"{answer.status} {said[:200]!r}")
            except (OSError, RuntimeError, http.client.HTTPException) as error:
                load.errors.append(repr(error))
                return
            load.pushes_s.append(time.monotonic() - started)
            load.stored += [event_id for event_id, _ in group]
            sent += len(group)


def load_of(
    port: int, rate: float, seconds: float, path: str = "/api/events", phones: int = PHONES, group: int = GROUP
) -> Load:
    """So many phones, each so many events a second for so long."""
    ready = [Phone(number, rate, seconds, group) for number in range(phones)]
    load, began = Load(), time.monotonic() + 0.2
    threads = [threading.Thread(target=phone.pushes, args=(port, path, began, load)) for phone in ready]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    load.lasted_s = time.monotonic() - began
    return load


def count_lost(server: Server, load: Load) -> None:
    """Notes how many acknowledged events the log lacks, or has twice."""
    cursor, found = 0, list[str]()
    while (page := server.asks(f"/api/events?after={cursor}&limit=500"))["events"]:
        found += [one["id"] for one in page["events"]]
        cursor = page["cursor"]
    load.lost = len(set(load.stored) - set(found)) + len(found) - len(set(found))


def rows() -> Iterator[Row]:
    """A row for phones at work, one for more events than can be taken at once; beside a route that only keeps them."""
    for rate in (2.0, 20.0):
        with TemporaryDirectory() as folder, Server(Path(folder)) as server:
            ours = load_of(server.port, rate, SHORT_S)
            count_lost(server, ours)
        with TemporaryDirectory() as folder, BareServer(Path(folder)) as server:
            bare = load_of(server.port, rate, SHORT_S, path="/events")
        if ours.errors or ours.lost:
            raise RuntimeError(f"{ours}: {ours.errors[:1]}")
        p95_s, bare_s = ours.percentile_s(0.95), bare.percentile_s(0.95)
        what = f"API: {PHONES} phones × {rate:g} events/s, {ours.events_per_s:.0f} a second stored, p95 of a push"
        beside = f"bare route ({bare.events_per_s:.0f} a second)"
        yield time_row(what, Compared(p95_s, bare_s, p95_s / bare_s), beside, MOST_S if rate == 2.0 else None)


class EarlierServer(Server):
    """An earlier version, out of the folder of its checkout."""

    def __init__(self, folder: Path, checkout: Path) -> None:
        super().__init__(folder)
        self.checkout = checkout

    def command(self) -> list[str]:
        return ["env", f"PYTHONPATH={self.checkout / 'server'}", *super().command()]


def main() -> None:
    """One measurement by hand."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("--rate", type=float, default=2.0, help="events a second of each phone")
    asked.add_argument("--seconds", type=float, default=60.0)
    asked.add_argument("--phones", type=int, default=PHONES)
    asked.add_argument("--group", type=int, default=GROUP, help="most events in a push")
    asked.add_argument("--database", help="URL of an empty database")
    asked.add_argument("--checkout", type=Path, help="folder of an earlier version")
    given = asked.parse_args()
    with TemporaryDirectory() as folder:
        own = Path(folder)
        server = EarlierServer(own, given.checkout) if given.checkout else Server(own, given.database)
        with server:
            load = load_of(server.port, given.rate, given.seconds, phones=given.phones, group=given.group)
            count_lost(server, load)
            print(load, *load.errors[:3], sep="\n")


if __name__ == "__main__":
    main()
