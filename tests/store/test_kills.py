"""The server, or PostgreSQL beneath it, killed again and again while phones push, pull and send photos.

Nothing that was acknowledged is missing, nothing stands twice, and what is kept of the batches is what the log gives.
"""

import http.client
import json
import random
import threading
import time
import urllib.error
import urllib.request
from contextlib import suppress

import pytest
from sqlalchemy import select

from amberbench.app import create_app
from amberbench.services import streams
from amberbench.store import db, reading
from amberbench.store.models import BatchRow, ShopRow
from e2e.server import ForkedServer
from tests.log import uuid7
from tests.measure.events import WritingPhone

FAILED = (OSError, http.client.HTTPException, json.JSONDecodeError)
PHONES = 3


class Shift:
    """Phones that work on whatever happens to the server, until `over`; what they were told."""

    def __init__(self, server, seed):
        self.server, self.over = server, threading.Event()
        self.acknowledged, self.sent, self.photos, self.pulled = {}, {}, {}, []
        self.broken = []
        jobs = [(self.pushes, f"phone-{number}", random.Random(f"{seed} {number}")) for number in range(PHONES)]
        jobs += [(self.pulls,), (self.sends_photos, random.Random(f"{seed} photos"))]
        self.threads = [threading.Thread(target=self.works, args=job, daemon=True) for job in jobs]

    def __enter__(self):
        for thread in self.threads:
            thread.start()
        return self

    def __exit__(self, *_):
        self.over.set()
        for thread in self.threads:
            thread.join(60)

    def works(self, job, *given):
        try:
            job(*given)
        except BaseException as error:
            self.broken.append(error)

    def until_answered(self, ask):
        """Asks again and again, as a phone does; None when the shift is over first."""
        while True:
            try:
                return ask()
            except FAILED as error:
                if isinstance(error, urllib.error.HTTPError) and error.code != 503:
                    raise
            if self.over.wait(0.02):
                return None

    def pushes(self, device_id, chance):
        phone = WritingPhone(device_id)
        while not self.over.is_set():
            events = phone.next_round()
            self.sent |= {event["id"]: event for event in events}
            while events and not self.over.is_set():
                group = events[: chance.randint(1, 12)]
                said = self.until_answered(lambda group=group: self.server.asks("/api/events", {"events": group}))
                for answer in said["answers"] if said else ():
                    assert answer["result"] in ("stored", "known")
                    assert self.acknowledged.setdefault(answer["id"], answer["position"]) == answer["position"]
                events = events[len(group) :]
                self.over.wait(0.01)

    def pulls(self):
        cursor, mark = 0, ""
        while not self.over.is_set():
            path = f"/api/events?after={cursor}&limit=50{mark}"
            page = self.until_answered(lambda path=path: self.server.asks(path))
            if page and page["events"]:
                self.pulled += [(one["position"], one["id"]) for one in page["events"]]
                cursor, mark = page["cursor"], f"&seen={page['cursor_mark']}"
            self.over.wait(0.02)

    def sends_photos(self, chance):
        while not self.over.wait(0.05):
            photo_id, content = uuid7(), b"\xff\xd8\xff" + chance.randbytes(20_000) + b"\xff\xd9"
            request = urllib.request.Request(f"{self.server.url}/api/photos/{photo_id}", content, method="PUT")
            request.add_header("Content-Type", "image/jpeg")
            if self.until_answered(lambda request=request: urllib.request.urlopen(request, timeout=20).status) == 204:
                self.photos[photo_id] = content


def is_whole(server, shift):
    """Everything that was acknowledged is in the log once and as it was sent, and the puller saw the same."""
    assert shift.broken == []
    cursor, log = 0, []
    while (page := server.asks(f"/api/events?after={cursor}&limit=500"))["events"]:
        log += page["events"]
        cursor = page["cursor"]
    found = {one["id"]: one for one in log}
    assert len(found) == len(log)
    assert {one: found[one]["position"] for one in shift.acknowledged} == shift.acknowledged
    for one in shift.acknowledged:
        assert {name: found[one][name] for name in shift.sent[one]} == shift.sent[one]
    assert shift.pulled == [(one["position"], one["id"]) for one in log][: len(shift.pulled)]
    for photo_id, content in shift.photos.items():
        with urllib.request.urlopen(f"{server.url}/api/photos/{photo_id}", timeout=20) as answer:
            assert answer.read() == content


def projections():
    """Every row that is made from the log, to the byte."""
    with reading() as session:
        batches = session.execute(select(*BatchRow.__table__.columns).order_by(BatchRow.batch_id)).all()
        return batches, session.execute(select(*ShopRow.__table__.columns)).all()


def rebuilds_alike(url):
    app = create_app({"SQLALCHEMY_DATABASE_URI": url})
    with app.app_context():
        before = projections()
        streams.rebuild()
        assert projections() == before
        db.engine.dispose()


def killed_again_and_again(server, kills, seed, cluster=None):
    """Kills the server so often, every third time PostgreSQL in its place; how much was acknowledged."""
    chance, deadline = random.Random(seed), 30
    with server, Shift(server, seed) as shift:
        log_id = server.asks("/api/health")["log_id"]
        for number in range(kills):
            time.sleep(chance.uniform(0.02, 0.5))
            if cluster and number % 3 == 0:
                cluster.kill()
                time.sleep(chance.uniform(0.0, 0.2))
                cluster.start_again()
            else:
                server.kill()
                server.begin()
            until = time.monotonic() + deadline
            while not server.answers():
                assert time.monotonic() < until, server.log.read_text()[-3000:]
                time.sleep(0.02)
        told = len(shift.acknowledged)
        with suppress(StopIteration):  # it still works after the last of them
            until = time.monotonic() + deadline
            while len(shift.acknowledged) == told:
                assert time.monotonic() < until, server.log.read_text()[-3000:]
                time.sleep(0.02)
        shift.__exit__()
        assert server.asks("/api/health")["log_id"] == log_id
        is_whole(server, shift)
        server.stop()
    rebuilds_alike(server.keeps[1])
    return len(shift.acknowledged), len(shift.photos)


def test_two_kills_lose_nothing_on_sqlite(tmp_path):
    assert min(killed_again_and_again(ForkedServer(tmp_path), 2, seed=1)) > 0


def test_two_kills_lose_nothing_on_postgresql(tmp_path, postgresql):
    server = ForkedServer(tmp_path, postgresql.new_database())
    assert min(killed_again_and_again(server, 2, seed=2, cluster=postgresql)) > 0


@pytest.mark.prove
@pytest.mark.parametrize("database", ["sqlite", "postgresql"])
def test_a_hundred_and_fifty_kills_lose_nothing(tmp_path, postgresql, database):
    seed = random.randrange(10**6)
    cluster = postgresql if database == "postgresql" else None
    server = ForkedServer(tmp_path, cluster.new_database() if cluster else None)
    events, photos = killed_again_and_again(server, 150, seed, cluster)
    print(f"\n{database}: 150 kills from seed {seed}, {events} events and {photos} photos acknowledged")
