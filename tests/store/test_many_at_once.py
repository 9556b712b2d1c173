"""Phones that push at the same time, and one that follows: nothing skipped, nothing twice."""

import sqlite3
import threading
from contextlib import closing

import pytest
from sqlalchemy import event, text

from amberbench import store
from amberbench.store import db
from tests.log import BEGUN, Phone, pulled, push, results
from tests.problem_shape import assert_problem

PHONES, PUSHES, EACH = 6, 12, 4


def test_puller_that_follows_pushing_phones_misses_nothing(app_on_each_database):
    app = app_on_each_database
    pushing = [Phone(device_id=f"phone-{number}") for number in range(PHONES)]
    sent, failed, done = [], [], threading.Event()

    def pushes(phone):
        client = app.test_client()
        try:
            for _ in range(PUSHES):
                events = [phone.event("noted", text="x") for _ in range(EACH)]
                assert results(push(client, *events)) == ["stored"] * EACH
                sent.extend(one["id"] for one in events)
        except BaseException as error:
            failed.append(error)

    got = []

    def follows():
        client, cursor = app.test_client(), BEGUN
        while True:
            last_round = done.is_set()
            page = pulled(client, cursor, 7)
            got.extend(page["events"])
            cursor = page["cursor"]
            if last_round and not page["events"]:
                return

    follower = threading.Thread(target=follows)
    follower.start()
    threads = [threading.Thread(target=pushes, args=[phone]) for phone in pushing]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    done.set()
    follower.join(60)
    assert failed == []
    assert [one["position"] for one in got] == sorted({one["position"] for one in got})
    assert sorted(one["id"] for one in got) == sorted(sent)
    assert len(sent) == PHONES * PUSHES * EACH


def test_two_phones_that_push_the_same_events_store_them_once(app_on_each_database):
    app = app_on_each_database
    events = [Phone().event("noted", text=str(number)) for number in range(20)]
    answers, gate = [], threading.Barrier(4)

    def pushes():
        client = app.test_client()
        gate.wait(10)
        answers.extend(results(push(client, *events)))

    threads = [threading.Thread(target=pushes) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(60)
    assert (answers.count("stored"), answers.count("known")) == (20, 60)


def test_reader_sees_nothing_of_a_push_before_all_of_it(app):
    with app.app_context(), store.writing() as session:
        session.execute(text("INSERT INTO shop (id, document, changed_ms) VALUES ('a', '{}', 0)"))
        seen = []
        reader = threading.Thread(target=lambda: seen.append(app.test_client().get("/api/shop").get_json()["id"]))
        reader.start()
        reader.join(30)
        assert seen == ["demo-shop"]
        session.rollback()


def test_database_that_stays_busy_is_a_problem_to_come_again_with(app, client, database):
    with app.app_context():
        # Another process holds the turn; our writer waits 50 ms instead of ten seconds.
        event.listen(db.engine, "checkout", lambda raw, *_: raw.execute("PRAGMA busy_timeout = 50").close())
    body = {"events": [Phone().event("freed")]}
    with closing(sqlite3.connect(database, isolation_level=None)) as another:
        another.execute("BEGIN IMMEDIATE")
        answer = client.post("/api/events", json=body)
        document = assert_problem(answer, 503)
        assert answer.headers["Retry-After"] == "5"
        assert document["errors"] == []
        another.execute("ROLLBACK")
    assert results(push(client, *body["events"])) == ["stored"]


@pytest.mark.parametrize("size", [1, 50])
def test_questions_asked_do_not_grow_with_what_is_stored(app, client, size):
    phones = [Phone() for _ in range(3)]
    for phone in phones:
        push(client, *[phone.event("noted", text="x") for _ in range(size)])
    asked = []
    with app.app_context():
        engine = db.engine
    event.listen(engine, "before_cursor_execute", lambda *args: asked.append(args[2]))
    counts = {}
    for path in ("/api/events", "/api/batches", "/api/snapshot", "/api/health", f"/api/batches/{phones[0].batch_id}"):
        asked.clear()
        client.get(path)
        counts[path] = sum(1 for statement in asked if statement.startswith("SELECT"))
    assert list(counts.values()) == [2, 1, 6, 2, 1]
    asked.clear()
    push(client, *[phones[0].event("noted", text="x") for _ in range(size)])
    assert sum(1 for statement in asked if statement.startswith("SELECT")) == 10
