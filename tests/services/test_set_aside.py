"""Events from more than a day ahead: kept, handed on, and folded into nothing."""

import flask_migrate
import pytest
from sqlalchemy import text

from amberbench.services import folding, setup
from amberbench.store import writing
from amberbench.store.database import MIGRATIONS
from tests.log import Phone, pulled, push, results

DAY_MS = 24 * 3600 * 1000


def record(client, phone):
    return client.get(f"/api/batches/{phone.batch_id}").get_json()


def at(event, ms):
    return event | {"at_ms": ms}


@pytest.mark.parametrize(("ahead_ms", "flags"), [(DAY_MS, ["future"]), (DAY_MS + 1, ["future", "ahead"])])
def test_event_more_than_a_day_ahead_says_so_whenever_it_is_answered(client, clock, ahead_ms, flags):
    event = at(Phone().event("freed"), clock.now_ms + ahead_ms)
    (first,) = push(client, event)
    clock.now_ms += 3 * DAY_MS
    (again,) = push(client, event)
    assert (first["result"], first["flags"]) == ("stored", flags)
    assert (again["result"], again["flags"]) == ("known", flags)
    assert pulled(client)["events"][0]["flags"] == flags


@pytest.mark.parametrize("together", [True, False])
def test_note_from_the_year_5138_does_not_stop_a_batch(client, together):
    phone = Phone()
    whole = phone.whole_batch()
    note = at(phone.event("noted", text="from far ahead"), 1e14)
    groups = [[*whole[:4], note, *whole[4:]]] if together else [whole[:4], [note], whole[4:8], whole[8:]]
    for group in groups:
        assert set(results(push(client, *group))) == {"stored"}
    found = record(client, phone)
    assert (found["run"]["closed_at_ms"], found["run"]["pieces"]) == (whole[-1]["at_ms"], 205)
    assert found["run"]["ignored"] == []
    assert found["summary"]["events"] == 12
    assert [one["id"] for one in found["events"]] == [one["id"] for one in whole]
    assert [one["id"] for one in found["set_aside"]] == [note["id"]]
    assert client.get(f"/api/batches/{phone.batch_id}.csv").text.count("did_not_fit") == 1


def test_batch_opened_far_ahead_waits_and_comes_with_its_phone(client):
    phone = Phone()
    opening = at(phone.opens(), 1e14)
    push(client, opening, phone.event("ready_checked"))
    assert client.get(f"/api/batches/{phone.batch_id}").status_code == 404
    assert opening["id"] in [one["id"] for one in client.get("/api/snapshot").get_json()["events"]]


def test_edit_from_far_ahead_does_not_freeze_what_a_caramel_contains(client, clock):
    phone = Phone()

    def says(contains, ms):
        body = {"doc": "caramels/caramel-firm", "field": "contains", "value": contains, "basis": "typed"}
        push(client, at(phone.event("shop_set", **body) | {"batch_id": None}, ms))
        (row,) = [one for one in client.get("/api/shop").get_json()["caramels"] if one["id"] == "caramel-firm"]
        return row["contains"]

    assert says(["soya"], 1e14) == ["milk"]
    assert says(["milk", "soya"], clock.now_ms + 1) == ["milk", "soya"]


def test_log_that_had_folded_such_an_event_is_folded_again_without_it(app, client):
    phone, whole = Phone(), Phone()
    push(client, phone.opens(), phone.event("ready_checked"), *whole.whole_batch())
    before = record(client, phone)
    push(client, at(phone.event("noted", text="x"), 1e14))
    with app.app_context():
        with writing() as session:
            session.execute(text("UPDATE batch SET step = 'as it was', run = NULL"))
        flask_migrate.downgrade(directory=MIGRATIONS, revision="0005")
        setup.set_up(None, 0)
    after = record(client, phone)
    assert (after["run"], after["summary"]["step"]) == (before["run"], "weigh")
    assert record(client, whole)["summary"]["step"] == "as it was"


def test_rebuilding_says_the_same(app, client):
    phone = Phone()
    events = phone.whole_batch()
    push(client, *events[:5], at(phone.event("noted", text="x"), 1e14))
    push(client, *events[5:])
    before = record(client, phone)
    with app.app_context():
        folding.rebuild()
    assert record(client, phone) == before


def decided(event, kind, **body):
    return Phone().event(kind, **body) | {"stream": f"set_aside/{event['id']}", "batch_id": None}


@pytest.mark.parametrize("first", ["the event", "the decision"])
def test_event_let_in_by_hand_counts_at_the_time_it_was_given(app, client, clock, first):
    phone = Phone()
    push(client, *phone.whole_batch()[:6])
    stirred = at(phone.event("read", surface_c=73.5), 1e14)
    let_in = decided(stirred, "let_in", at_ms=phone.now_ms)
    before = record(client, phone)
    for one in (stirred, let_in) if first == "the event" else (let_in, stirred):
        push(client, one)
    found = record(client, phone)
    assert found["set_aside"] == []
    assert [(one["id"], one["at_ms"]) for one in found["events"]][-1] == (stirred["id"], phone.now_ms)
    assert found["run"]["last_at_ms"] == phone.now_ms
    assert found["run"]["done"] != before["run"]["done"] or found["run"] != before["run"]
    assert let_in["id"] in [one["id"] for one in client.get("/api/snapshot").get_json()["events"]]
    push(client, decided(stirred, "kept_out") | {"at_ms": clock.now_ms + 60_000, "device_id": "other"})
    again = record(client, phone)
    assert [one["id"] for one in again["set_aside"]] == [stirred["id"]]
    assert again["run"] == before["run"]
    with app.app_context():
        folding.rebuild()
    assert record(client, phone) == again


@pytest.mark.parametrize("at_ms", [None, "now", -1, 1e14, True])
def test_event_let_in_at_no_sound_time_stays_aside(client, at_ms):
    phone = Phone()
    note = at(phone.event("noted", text="x"), 1e14)
    push(client, phone.opens(), note, decided(note, "let_in", at_ms=at_ms))
    assert [one["id"] for one in record(client, phone)["set_aside"]] == [note["id"]]


def test_shop_edit_let_in_by_hand_stands(client, clock):
    body = {"doc": "ovens/oven-large", "field": "rated_w", "value": 900, "basis": "typed"}
    edit = at(Phone().event("shop_set", **body) | {"batch_id": None}, 1e14)
    push(client, edit)
    assert client.get("/api/shop").get_json()["ovens"][0]["rated_w"] != 900
    push(client, decided(edit, "let_in", at_ms=clock.now_ms))
    assert client.get("/api/shop").get_json()["ovens"][0]["rated_w"] == 900
