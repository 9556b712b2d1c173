"""Every event belongs to a stream: what older apps wrote is read as it is, what newer ones know is kept."""

import sqlite3
from contextlib import closing
from pathlib import Path

import pytest

from amberbench.services import folding, setup, streams
from amberbench.store import db
from tests.conforming import is_document
from tests.conftest import application
from tests.log import Phone, pulled, push, results

OLD = Path(__file__).parent.parent / "old" / "database_0005.sql"
ORDER = {"stream": "parcel/0193-7", "batch_id": None}


def record(client, phone):
    return client.get(f"/api/batches/{phone.batch_id}").get_json()


@pytest.mark.parametrize(
    ("told", "stream"),
    [
        ({"batch_id": "b-1"}, "batch/b-1"),
        ({"batch_id": None, "kind": "shop_set"}, "shop/demo-shop"),
        ({"batch_id": None, "kind": "newer"}, "shop/demo-shop"),
        ({"batch_id": "b-1", "stream": "batch/b-1"}, "batch/b-1"),
        ({"batch_id": None, "stream": "batch/b-1"}, "batch/b-1"),
        ({"batch_id": None, "stream": "lot/A-117"}, "lot/A-117"),
    ],
)
def test_event_is_read_into_its_stream_and_comes_back_with_it(client, told, stream):
    event = Phone().event("freed") | told
    push(client, event)
    (kept,) = pulled(client)["events"]
    is_document("ServedEvent", kept)
    assert (kept["stream"], kept["batch_id"]) == (stream, stream[6:] if stream.startswith("batch/") else None)
    assert results(push(client, event, kept)) == ["known", "known"]


@pytest.mark.parametrize(
    "told",
    [
        {"stream": "batch/other"},
        {"stream": "order/1"},
        {"stream": "shop/demo-shop"},
        {"stream": "shop/elsewhere", "batch_id": None},
        {"stream": "Batch/x"},
        {"stream": "order"},
        {"stream": "order/a/b"},
        {"stream": "order/" + "x" * 65},
        {"stream": 7},
    ],
)
def test_stream_that_contradicts_the_event_or_is_none_is_refused(client, told):
    (answer,) = push(client, Phone().event("freed") | told)
    assert (answer["result"], answer["field"]) == ("refused", "stream")


def test_streams_of_a_newer_app_are_kept_pulled_given_to_new_phones_and_not_folded(client):
    phone, other = Phone(), Phone()
    order = phone.event("order_taken", boxes=12) | ORDER
    push(client, phone.opens(), order, *other.whole_batch())
    assert order["id"] in [one["id"] for one in pulled(client)["events"]]
    started = client.get("/api/snapshot").get_json()["events"]
    assert [one["stream"] for one in started if one["id"] == order["id"]] == [ORDER["stream"]]
    assert {one["stream"].split("/")[0] for one in started} == {"shop", "batch", "parcel"}
    assert [one["batch_id"] for one in client.get("/api/batches").get_json()["batches"]].count(None) == 0
    assert len(client.get("/api/batches").get_json()["batches"]) == 2


def test_a_kind_of_stream_is_one_entry(client, monkeypatch):
    folded = {}
    kind = streams.StreamKind(lambda _, new: folded.update(new.by_id), lambda session, since: [], lambda: len(folded))
    monkeypatch.setitem(streams.KINDS, "parcel", kind)
    phone = Phone()
    push(client, phone.event("order_taken", boxes=12) | ORDER, phone.event("freed"))
    assert [[one["kind"] for one in events] for events in folded.values()] == [["order_taken"]]
    assert ORDER["stream"] not in [one["stream"] for one in client.get("/api/snapshot").get_json()["events"]]
    with client.application.app_context():
        assert streams.rebuild() == {
            "shop": 1,
            "batch": 0,
            "lot": 0,
            "order": 0,
            "pack": 0,
            "set_aside": 0,
            "parcel": 1,
        }


@pytest.fixture
def old(tmp_path):
    """A client of a database file as an older app (migration 0005) left it."""
    file = tmp_path / "old.sqlite"
    with closing(sqlite3.connect(file)) as connection:
        connection.executescript(OLD.read_text(encoding="utf-8"))
    app = application(file)
    with app.app_context():
        setup.set_up(None, 0)
    yield app.test_client()
    with app.app_context():
        db.engine.dispose()


def test_old_database_goes_on_with_every_event_in_its_stream(old):
    log = pulled(old, 0)["events"]
    kinds = [one["stream"].split("/")[0] for one in log]
    assert (kinds.count("shop"), kinds.count("batch"), len(log)) == (6, 17, 23)
    for one in log:
        assert one["stream"] == (f"batch/{one['batch_id']}" if one["batch_id"] else f"shop/{one['shop_id']}")
    shop = old.get("/api/shop").get_json()
    assert [(one["name"], one["rated_w"]) for one in shop["ovens"]] == [("Blue oven", 900)]
    assert [one["contains"] for one in shop["caramels"]] == [["milk", "soya"]]
    summaries = old.get("/api/batches").get_json()["batches"]
    assert sorted((one["step"], one["events"]) for one in summaries) == [("closed", 11), ("melt", 5)]


def test_old_batch_takes_what_an_older_phone_still_sends_and_what_a_newer_one_does(old):
    (running,) = [one for one in old.get("/api/batches").get_json()["batches"] if one["step"] == "melt"]
    phone = Phone(running["batch_id"], "phone-a")
    phone.seq, phone.now_ms = 100, phone.now_ms + 60_000
    shop_id = old.get("/api/health").get_json()["shop_id"]
    older = phone.event("burst_started", seconds_s=60, advised_s=60) | {"shop_id": shop_id}
    newer = phone.event("burst_ended") | {"shop_id": shop_id, "stream": f"batch/{running['batch_id']}"}
    edit = phone.event("shop_set", doc="ovens/o1", field="rated_w", value=950, basis="typed")
    assert results(push(old, older, newer, edit | {"shop_id": shop_id, "batch_id": None})) == ["stored"] * 3
    found = record(old, phone)
    assert found["run"]["melt"]["bursts"] or found["run"]["melt"]["burning"]
    assert [one["kind"] for one in found["set_aside"]] == ["noted"]
    assert old.get("/api/shop").get_json()["ovens"][0]["rated_w"] == 950
    with old.application.app_context():
        folding.rebuild()
    assert record(old, phone) == found
