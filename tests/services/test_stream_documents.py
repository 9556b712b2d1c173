"""Lots, orders and boxes packed: kept once, folded, listed, found, taken along, made anew, given to new phones."""

import csv
import io
import random

import pytest

from amberbench.engine import fields
from amberbench.services import stream_documents, streams
from tests import strategies_streams
from tests.conforming import is_document
from tests.log import Phone, push, results
from tests.problem_shape import assert_problem

DAY_MS = 86_400_000


def writes(stream, device_id="phone-a", after_ms=0):
    """A phone that writes into a stream."""
    phone = Phone(device_id=device_id)
    phone.now_ms += after_ms
    return lambda kind, **body: phone.event(kind, **body) | {"stream": stream, "batch_id": None}


def delivery(stream="lot/l-118", **more):
    body = {"material": "caramels/firm", "packs": 4, "pack_amount": 2.5, "supplier_lot": "118"} | more
    return writes(stream)("received", **body)


def order(stream, customer, wanted_ms, count=40, **more):
    line = {"box_id": "box-9", "count": count}
    return writes(stream)("placed", customer=customer, wanted_ms=wanted_ms, lines=[line], **more)


def listed(client, place, **query):
    reply = client.get(f"/api/{place}", query_string=query).get_json()
    is_document(place.capitalize(), reply)
    return reply


def test_delivery_and_order_arrive_once_and_are_listed(client):
    lot, bakery = delivery(), order("order/o-1", "Corner bakery", 1_764_600_000_000)
    assert results(push(client, lot, bakery)) == ["stored", "stored"]
    assert results(push(client, lot, bakery)) == ["known", "known"]
    (found,) = listed(client, "lots")["documents"]
    assert (found["supplier_lot"], found["amount"], found["unit"]) == ("118", 10.0, "kg")
    (placed,) = listed(client, "orders")["documents"]
    assert (placed["customer"], placed["state"], placed["lines"][0]["count"]) == ("Corner bakery", "open", 40)


def test_list_goes_page_by_page_and_finds_words(client):
    names = [f"Shop {n}" for n in range(7)]
    push(client, *[order(f"order/o-{n}", name, 1_764_600_000_000 + n % 3) for n, name in enumerate(names)])
    seen, before, more = [], None, True
    while more:
        part = listed(client, "orders", limit=2, **({"before": before} if before else {}))
        seen += [one["id"] for one in part["documents"]]
        before, more = seen[-1], part["more"]
    assert sorted(seen) == sorted(set(seen)) == [f"o-{n}" for n in range(7)]
    assert [one["customer"] for one in listed(client, "orders", search="SHOP 4")["documents"]] == ["Shop 4"]
    assert listed(client, "orders", search="%")["documents"] == []
    assert_problem(client.get("/api/orders?before=a b"), 422, "malformed", "before")


def test_what_is_over_may_be_left_out(client):
    say = writes("order/o-1")
    push(client, order("order/o-1", "Corner bakery", 1_764_600_000_000), say("cancelled", why="closed"))
    assert listed(client, "orders")["documents"][0]["state"] == "cancelled"
    assert listed(client, "orders", only_open=True)["documents"] == []


@pytest.mark.parametrize("query", ["only_open=perhaps", "only_open=null&only_open=null", "limit=0"])
def test_list_asked_for_wrongly_is_a_problem(client, query):
    assert_problem(client.get(f"/api/lots?{query}"), 422, field=query.partition("=")[0])


def test_one_of_them_comes_with_its_events_in_their_order(client):
    late, early = writes("order/o-1", after_ms=9000), order("order/o-1", "Corner bakery", 1_764_600_000_000)
    push(client, late("changed", note="no nuts"))
    push(client, early)
    found = client.get("/api/orders/o-1").get_json()
    is_document("OrderRecord", found)
    assert [one["kind"] for one in found["events"]] == ["placed", "changed"]
    assert found["document"]["note"] == "no nuts"
    assert_problem(client.get("/api/orders/none"), 404)


@pytest.mark.parametrize("kind", sorted(fields.STREAM_EVENTS))
def test_rebuilt_from_the_log_they_are_the_same_whatever_was_sent(client, kind):
    rng = random.Random(kind)
    for nth in range(6):
        log = strategies_streams.events_of(rng, fields.STREAM_EVENTS[kind], sorted(fields.STREAM_EVENTS[kind]))
        phone = Phone(device_id=f"phone-{nth}")
        renamed = {one["id"]: phone.event(one["kind"])["id"] for one in log}
        for one in log:
            body = one["body"]
            if "event_id" in body:
                body = {"event_id": renamed[body["event_id"]]}
            sent = phone.event(one["kind"]) | {"id": renamed[one["id"]], "at_ms": one["at_ms"], "body": body}
            push(client, sent | {"stream": f"{kind}/s-{nth}", "batch_id": None})
    before = listed(client, f"{kind}s", limit=100)["documents"]
    assert len(before) == 6
    with client.application.app_context():
        assert streams.rebuild()[kind] == 6
    assert listed(client, f"{kind}s", limit=100)["documents"] == before


def test_new_phone_starts_from_what_is_open_and_what_was_over_lately(client, clock):
    now_ms = clock.now_ms
    old, lately = now_ms - 200 * DAY_MS, now_ms - 20 * DAY_MS
    events = []
    for name, at_ms in (("old", old), ("lately", lately)):
        for end in ("open", "over"):
            say = writes(f"order/{name}-{end}")
            events.append(order(f"order/{name}-{end}", name, at_ms) | {"at_ms": at_ms})
            if end == "over":
                events.append(say("cancelled", why="") | {"at_ms": at_ms + 1000})
    push(client, *events)
    given = {one["stream"] for one in client.get("/api/snapshot").get_json()["events"]}
    assert {one for one in given if one.startswith("order/")} == {
        "order/old-open", "order/lately-open", "order/lately-over",
    }  # fmt: skip


def test_they_are_taken_along_as_csv_and_json(client):
    say = writes("order/o-1", after_ms=1000)
    push(client, delivery(supplier="=cmd"), order("order/o-1", "Corner bakery", 1_764_600_000_000))
    push(client, say("changed", lines=[{"box_id": "box-9", "count": 3}, {"product_id": "p", "mass_kg": 1.5}]))
    rows = list(csv.DictReader(io.StringIO(client.get("/api/orders.csv").get_data(as_text=True))))
    assert [(row["customer"], row["box_id"], row["count"], row["mass_kg"]) for row in rows] == [
        ("Corner bakery", "box-9", "3", ""), ("Corner bakery", "", "", "1.5"),
    ]  # fmt: skip
    (lot,) = csv.DictReader(io.StringIO(client.get("/api/lots.csv").get_data(as_text=True)))
    assert (lot["supplier"], lot["amount"], lot["received_at"]) == ("'=cmd", "10", "2025-11-24T16:00:01Z")
    whole = client.get("/api/lots.json").get_json()
    assert (whole["holds"], whole["documents"]) == ("lots", listed(client, "lots")["documents"])


def test_mistake_of_ours_keeps_the_events_and_says_so(client, monkeypatch):
    def breaks(*_):
        raise ZeroDivisionError("bug")

    monkeypatch.setattr(stream_documents.catalogue, "call", breaks)
    assert results(push(client, delivery())) == ["stored"]
    found = client.get("/api/lots/l-118").get_json()
    assert (found["document"], len(found["events"])) == (None, 1)
    assert "ZeroDivisionError: bug" in found["broken"]
    monkeypatch.undo()
    with client.application.app_context():
        streams.rebuild()
    assert listed(client, "lots")["documents"][0]["supplier_lot"] == "118"


def test_older_engine_s_documents_are_folded_again(client, monkeypatch):
    monkeypatch.setattr(stream_documents, "VERSION", "older")
    push(client, delivery())
    monkeypatch.undo()
    streams.fold_outdated(client.application)
    assert client.get("/api/lots/l-118").get_json()["document"]["amount"] == 10.0
