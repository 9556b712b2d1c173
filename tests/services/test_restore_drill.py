"""The restore drill: backed up under load, destroyed, put back; phones bring the rest, all amounts to the same."""

import threading

import pytest
from sqlalchemy import text

from amberbench.services import backup, streams
from amberbench.store import db, reading
from tests.conftest import application
from tests.log import Phone, pulled, push
from tests.services.test_backup import command


class Pusher:
    """A phone that runs batch after batch, keeps all it wrote, and offers it again to a log it does not know."""

    def __init__(self, number: int) -> None:
        self.number, self.written, self.acknowledged, self.log_id = number, [], set(), None

    def exchange(self, client) -> None:
        log_id = client.get("/api/health").get_json()["log_id"]
        if log_id != self.log_id:
            self.acknowledged, self.log_id = set(), log_id
        left = [one for one in self.written if one["id"] not in self.acknowledged]
        for start in range(0, len(left), 100):
            answers = push(client, *left[start : start + 100])
            assert {one["result"] for one in answers} <= {"stored", "known"}
            self.acknowledged |= {one["id"] for one in answers}

    def works(self, app, stop) -> None:
        client = app.test_client()
        while not stop.is_set():
            for event in Phone(device_id=f"phone-{self.number}").whole_batch():
                self.written.append(event)
                self.exchange(client)


def projections(app):
    """What is made from the log, to the byte."""
    with app.app_context(), reading() as session:
        tables = ("batch", "unopened", "shop")
        return [session.execute(text(f"SELECT * FROM {one} ORDER BY 1")).all() for one in tables]


def drill(database, tmp_path, phones, batches):
    """One drill; how many events the backup lacked."""
    app, stop = application(database), threading.Event()
    pushers = [Pusher(number) for number in range(phones)]
    threads = [threading.Thread(target=one.works, args=[app, stop]) for one in pushers]
    for thread in threads:
        thread.start()

    def wait_for(events):
        while sum(len(one.acknowledged) for one in pushers) < events and all(one.is_alive() for one in threads):
            stop.wait(0.01)

    wait_for(batches * 11)
    with app.app_context():
        made = backup.make(0, tmp_path / "stick")
    wait_for(3 * batches * 11)
    stop.set()
    for thread in threads:
        thread.join(60)
    with app.app_context():
        db.engine.dispose()
    for one in database.parent.glob(f"{database.name}*"):
        one.unlink()
    command("restore", made.file, database=database)
    again = application(database)
    for one in pushers:
        one.exchange(again.test_client())
    log, page = [], {"cursor": 0, "more": True}
    while page["more"]:
        page = pulled(again.test_client(), page["cursor"])
        log += page["events"]
    ids = [one["id"] for one in log if one["device_id"].startswith("phone-")]
    assert len(set(ids)) == len(ids)
    assert set(ids) == {event["id"] for one in pushers for event in one.written}
    folded = projections(again)
    assert len(folded[0]) > batches
    with again.app_context():
        streams.rebuild()
    assert projections(again) == folded
    with again.app_context():
        db.engine.dispose()
    return len(log) - made.contents.events


def test_restored_shop_gets_back_from_its_phones_what_the_backup_lacks(database, tmp_path):
    assert drill(database, tmp_path, 3, 2) > 0


@pytest.mark.prove
def test_restore_drill_at_length(database, tmp_path):
    lacked = drill(database, tmp_path, 8, 30)
    print(f"restore drill: 8 phones brought back {lacked} events; none lost, none doubled, rebuild equal")
    assert lacked > 100
