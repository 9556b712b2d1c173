"""Which log a database holds: phones notice that it was lost, replaced or put back from a copy."""

import shutil
import sqlite3
from contextlib import closing

import flask_migrate
import pytest
from sqlalchemy import text

from amberbench.config import demo_shop_file
from amberbench.services import setup
from amberbench.store import db, writing
from amberbench.store.database import MIGRATIONS
from tests.bench import NINE_OCLOCK_MS
from tests.conforming import is_document
from tests.conftest import application
from tests.log import BEGUN, Phone, pulled, push, results, uuid7
from tests.problem_shape import assert_problem

NOW = int(NINE_OCLOCK_MS)


@pytest.fixture
def fresh(tmp_path):
    """Makes a client of a new database; empty: of a shop with nothing in it."""
    made = []

    def make(empty=False):
        app = application(tmp_path / f"{len(made)}.sqlite")
        made.append(app)
        with app.app_context():
            setup.set_up(None if empty else demo_shop_file().read_text(encoding="utf-8"), NOW)
        return app.test_client()

    yield make
    for app in made:
        with app.app_context():
            db.engine.dispose()


def log_id(client):
    return client.get("/api/health").get_json()["log_id"]


def test_health_push_pull_and_snapshot_name_the_same_log(client):
    health = client.get("/api/health").get_json()
    pushed = client.post("/api/events", json={"events": [Phone().opens()]}).get_json()
    snapshot = client.get("/api/snapshot").get_json()
    names = {one["log_id"] for one in (health, pushed, snapshot, pulled(client))}
    assert len(names) == 1
    for name, document in (("Health", health), ("Pushed", pushed), ("Snapshot", snapshot)):
        is_document(name, document)


def test_every_database_has_a_name_of_its_own_that_stays(fresh):
    one, other = fresh(), fresh()
    assert log_id(one) != log_id(other)
    before = log_id(one)
    with one.application.app_context():
        setup.set_up(None, 0)
    assert log_id(one) == before


def test_database_of_an_older_app_gets_a_name(app, client):
    push(client, Phone().opens())
    with app.app_context():
        flask_migrate.downgrade(directory=MIGRATIONS, revision="0006")
        setup.set_up(None, 0)
    assert len(log_id(client)) == 36
    assert len(pulled(client)["events"]) == 1


def test_pull_refuses_the_cursor_of_a_log_put_back_from_a_copy_and_grown_again(app, client, database, tmp_path):
    phone = Phone()
    push(client, phone.opens())
    with closing(sqlite3.connect(database)) as connection:
        connection.execute("VACUUM INTO ?", (str(tmp_path / "copy.sqlite"),))
    lost, kept = phone.event("ready_checked"), phone.event("weighed", kg=1.8)
    push(client, lost)
    page = pulled(client)
    at = f"after={page['cursor']}&seen={page['cursor_mark']}"
    assert client.get(f"/api/events?{at}").get_json()["events"] == []
    with app.app_context():
        db.engine.dispose()
    shutil.copy(tmp_path / "copy.sqlite", database)
    for aside in ("-wal", "-shm"):
        database.with_name(database.name + aside).unlink(missing_ok=True)
    assert_problem(client.get(f"/api/events?{at}"), 422, "other_log", "seen")
    push(client, kept)
    assert_problem(client.get(f"/api/events?{at}"), 422, "other_log", "seen")
    assert client.get(f"/api/events?after={page['cursor']}").get_json()["events"] == []
    push(client, lost)
    assert_problem(client.get(f"/api/events?{at}"), 422, "other_log", "seen")
    newest = pulled(client)
    assert client.get("/api/snapshot").get_json()["cursor_mark"] == newest["cursor_mark"]


def test_pull_refuses_the_cursor_though_the_same_event_came_back_to_its_place(app, client, clock):
    phone = Phone()
    push(client, phone.opens(), phone.event("ready_checked"))
    page = pulled(client)
    at = f"after={page['cursor']}&seen={page['cursor_mark']}"
    with app.app_context(), writing() as session:
        session.execute(
            text("UPDATE event SET received_ms = received_ms + 60000 WHERE position = :at"), {"at": page["cursor"]}
        )
    assert_problem(client.get(f"/api/events?{at}"), 422, "other_log", "seen")


def test_what_a_phone_brings_back_stands_over_a_shop_begun_later(client, clock):
    phone = Phone()
    phone.now_ms = clock.now_ms - 90 * 24 * 3600 * 1000
    edit = {"doc": "ovens/oven-large", "field": "rated_w", "value": 900, "basis": "typed"}
    push(client, phone.event("shop_set", **edit) | {"batch_id": None})
    assert client.get("/api/shop").get_json()["ovens"][0]["rated_w"] == 900


@pytest.mark.parametrize("empty", [False, True])
def test_shop_nobody_has_touched_gives_way_to_the_one_that_phones_bring_back(fresh, empty):
    client, phone = fresh(empty), Phone()

    def says(shop_id, value):
        edit = {"doc": "ovens/own", "field": "name", "value": value, "basis": "typed"}
        push(client, phone.event("shop_set", **edit) | {"batch_id": None, "shop_id": shop_id})
        shop = client.get("/api/shop").get_json()
        return shop["id"], [one["name"] for one in shop["ovens"]]

    assert says("our-shop", "Blue oven") == ("our-shop", ["Blue oven"])
    assert says("another", "Red oven") == ("our-shop", ["Blue oven"])


def test_event_offered_with_what_a_server_had_added_is_the_same_event(client):
    event = Phone().event("freed")
    push(client, event)
    (kept,) = pulled(client)["events"]
    assert results(push(client, kept)) == ["known"]
    other = Phone().event("freed") | {"position": 7, "received_ms": 7, "flags": ["future"], "hand": "left"}
    push(client, other)
    assert pulled(client)["events"][1]["hand"] == "left"
    assert pulled(client)["events"][1]["position"] == BEGUN + 2
    assert client.get(f"/api/events?seen={uuid7()}").status_code == 422
