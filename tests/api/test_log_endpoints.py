"""The batch log over the network: pushed once, pulled in order, never lost."""

import gzip

import pytest

from tests.conforming import is_document
from tests.log import BEGUN, Phone, pulled, push, results, uuid7
from tests.problem_shape import assert_problem


def test_event_is_stored_once_and_known_when_it_comes_again(client):
    event = Phone().opens()
    first, again = push(client, event), push(client, event)
    is_document("Pushed", client.post("/api/events", json={"events": [event]}).get_json())
    assert (results(first), results(again)) == (["stored"], ["known"])
    assert first[0]["position"] == again[0]["position"] == BEGUN + 1
    assert len(pulled(client)["events"]) == 1


def test_same_event_twice_in_one_push_is_stored_once(client):
    event = Phone().opens()
    answers = push(client, event, event)
    assert results(answers) == ["stored", "known"]
    assert answers[0]["position"] == answers[1]["position"]


def test_names_in_another_order_are_the_same_event(client):
    event = Phone().event("read", surface_c=71.5, note="x")
    push(client, event)
    shuffled = dict(reversed(event.items())) | {
        "body": dict(reversed(event["body"].items())),
        "at_ms": float(event["at_ms"]),
    }
    assert results(push(client, shuffled)) == ["known"]


@pytest.mark.parametrize(
    "change",
    [
        {"kind": "freed"},
        {"body": {"x": 1}},
        {"at_ms": 1.0},
        {"seq": 99},
        {"batch_id": None},
        {"v": 2},
        {"hand": "left"},
    ],
)
def test_id_that_stands_for_something_else_is_refused_and_nothing_overwritten(client, change):
    event = Phone().event("flipped")
    push(client, event)
    (answer,) = push(client, event | change)
    assert (answer["result"], answer["code"], answer["id"]) == ("refused", "id_reused", event["id"])
    (kept,) = pulled(client)["events"]
    assert {name: kept[name] for name in event} == event


def test_event_comes_back_as_it_was_written(client):
    event = Phone().event("noted", text="ámbar, 71 °C ✓", deep={"a": [1, 2.5, None, True]})
    event |= {"offset_ms": -124980.5, "at_ms": 1764000001000.25}
    push(client, event)
    (kept,) = pulled(client)["events"]
    assert {name: kept[name] for name in event} == event
    is_document("Pulled", pulled(client))


def test_unknown_kind_newer_version_and_unknown_members_are_kept(client):
    phone = Phone()
    events = [phone.event("deposited", row=3), phone.event("read", surface_c="warm") | {"v": 2, "hand": "left"}]
    assert results(push(client, phone.opens(), *events)) == ["stored"] * 3
    kept = pulled(client)["events"][1:]
    assert [{name: one[name] for name in event} for one, event in zip(kept, events, strict=True)] == events
    record = client.get(f"/api/batches/{phone.batch_id}").get_json()
    assert record["summary"]["events"] == 3


@pytest.mark.parametrize(
    ("change", "field"),
    [
        ({"id": "7"}, "id"),
        ({"id": None}, "id"),
        ({"id": 7}, "id"),
        ({"id": "0193a1b2-0000-4000-8000-000000000000"}, "id"),
        ({"id": uuid7().upper()}, "id"),
        ({"id": uuid7() + "\n"}, "id"),
        ({"v": 0}, "v"),
        ({"v": True}, "v"),
        ({"shop_id": ""}, "shop_id"),
        ({"device_id": "x" * 65}, "device_id"),
        ({"seq": -1}, "seq"),
        ({"seq": 1.5}, "seq"),
        ({"at_ms": "now"}, "at_ms"),
        ({"at_ms": -1}, "at_ms"),
        ({"at_ms": 1e15}, "at_ms"),
        ({"offset_ms": None}, "offset_ms"),
        ({"batch_id": "a b"}, "batch_id"),
        ({"kind": "Poured!"}, "kind"),
        ({"body": []}, "body"),
        ({"body": None}, "body"),
        ({"body": {"text": "x" * 300_000}}, "body"),
        ({"more": "x" * 300_000}, "body"),
    ],
)
def test_malformed_or_oversize_event_is_refused_and_its_neighbours_stored(client, change, field):
    phone = Phone()
    before, after = phone.event("freed"), phone.event("flipped")
    answers = push(client, before, phone.event("scored") | change, after)
    assert results(answers) == ["stored", "refused", "stored"]
    assert answers[1]["field"] == field
    assert answers[1]["position"] is None
    assert [one["kind"] for one in pulled(client)["events"]] == ["freed", "flipped"]


def test_what_is_no_record_is_refused(client):
    assert results(push(client, 7, None, "read", [], {}, True)) == ["refused"] * 6
    assert pulled(client)["events"] == []


def test_missing_member_is_refused_by_name(client):
    event = Phone().event("freed")
    for name in set(event) - {"batch_id"}:
        (answer,) = push(client, {one: event[one] for one in event if one != name})
        assert (answer["result"], answer["field"]) == ("refused", name)
    assert results(push(client, {one: event[one] for one in event if one != "batch_id"})) == ["stored"]


def test_more_than_500_events_at_once_are_refused_as_a_whole(client):
    phone = Phone()
    events = [phone.event("noted", text="x") for _ in range(501)]
    assert_problem(client.post("/api/events", json={"events": events}), 422, "too_many", "events")
    assert results(push(client, *events[:500])) == ["stored"] * 500
    assert push(client) == []


@pytest.mark.parametrize(
    ("body", "code"),
    [
        ({}, "missing"),
        ({"events": None}, "missing"),
        ({"events": {}}, "not_a_list"),
        ({"events": [], "x": 1}, "unknown_field"),
    ],
)
def test_push_that_is_no_list_of_events_is_a_problem(client, body, code):
    assert_problem(client.post("/api/events", json=body), 422, code)


@pytest.mark.parametrize(
    ("ahead_ms", "offset_ms", "flags"),
    [
        (0, 0, []),
        (300_000, 0, []),
        (300_001, 0, ["future"]),
        # A phone 125 s fast that knows it is: nothing wrong (a constructed case).
        (125_000, -124_980, []),
        # Ten minutes fast, and it does not know.
        (600_000, 0, ["future"]),
        (600_000, -600_000, []),
        # Ten minutes slow, corrected.
        (-600_000, 600_000, []),
        (-600_000, 1_200_000, ["future"]),
    ],
)
def test_event_from_the_future_is_kept_and_flagged(client, clock, ahead_ms, offset_ms, flags):
    event = Phone().event("freed") | {"at_ms": clock.now_ms + ahead_ms, "offset_ms": offset_ms}
    (answer,) = push(client, event)
    assert (answer["result"], answer["flags"]) == ("stored", flags)
    assert pulled(client)["events"][0]["flags"] == flags


def test_event_of_another_shop_is_kept_and_flagged(client):
    (answer,) = push(client, Phone().event("freed") | {"shop_id": "elsewhere"})
    assert (answer["result"], answer["flags"]) == ("stored", ["other_shop"])


def test_pull_goes_page_by_page_in_the_order_of_storing(client):
    phone = Phone()
    events = [phone.event("noted", text=str(n)) for n in range(25)]
    push(client, *events[:10])
    push(client, *events[10:])
    cursor, got, more = BEGUN, [], True
    while more:
        page = pulled(client, cursor, 7)
        got += page["events"]
        cursor, more = page["cursor"], page["more"]
    assert [one["id"] for one in got] == [one["id"] for one in events]
    assert [one["position"] for one in got] == sorted(one["position"] for one in got)
    assert pulled(client, cursor) | {"log_id": ""} == {
        "log_id": "",
        "events": [],
        "cursor": cursor,
        "cursor_mark": None,
        "more": False,
    }
    assert pulled(client, 10**9)["cursor"] == 10**9


def test_facts_survive_a_plan_the_engine_cannot_fold(client, caplog):
    phone = Phone()
    for plan in ({}, {"reply": 7}, {"name": 7, "kind": ["slab"], "reply": {"caramel_kg": "much"}}):
        phone.batch_id = uuid7()
        assert results(push(client, phone.event("batch_opened", plan=plan), phone.event("freed"))) == [
            "stored",
            "stored",
        ]
        record = client.get(f"/api/batches/{phone.batch_id}").get_json()
        assert record["run"] is None
        assert record["summary"]["events"] == 2
    assert "could not be folded" in caplog.text
    assert client.get("/api/batches").get_json()["batches"][0]["step"] is None


def test_batch_whose_opening_has_not_come_is_kept_and_folded_when_it_does(client):
    phone = Phone()
    events = phone.whole_batch()
    push(client, *events[1:])
    assert_problem(client.get(f"/api/batches/{phone.batch_id}"), 404)
    known = [one for one in client.get("/api/snapshot").get_json()["events"] if one["batch_id"]]
    assert {one["id"] for one in known} == {one["id"] for one in events[1:]}
    push(client, events[0])
    assert client.get(f"/api/batches/{phone.batch_id}").get_json()["summary"]["pieces"] == 205


def test_whatever_order_they_come_in_the_batch_is_the_same(client):
    phone = Phone()
    events = phone.whole_batch()
    push(client, *reversed(events))
    backwards = client.get(f"/api/batches/{phone.batch_id}").get_json()
    assert [one["id"] for one in backwards["events"]] == [one["id"] for one in events]
    other = Phone()
    for event in other.whole_batch():
        push(client, event)
    forwards = client.get(f"/api/batches/{other.batch_id}").get_json()
    assert backwards["run"]["done"] == forwards["run"]["done"]
    for name in ("step", "pieces", "caramel_kg", "good_kg", "closed_at_ms", "events"):
        assert backwards["summary"][name] == forwards["summary"][name]


def test_undone_event_counts_as_not_there(client):
    phone = Phone()
    opening, counted = phone.opens(), phone.event("counted", pieces=12)
    push(client, opening, counted, phone.event("undone", event_id=counted["id"]))
    record = client.get(f"/api/batches/{phone.batch_id}").get_json()
    assert record["run"]["pieces"] is None
    assert len(record["events"]) == 3


def test_long_answer_is_packed_for_whoever_takes_it_and_says_the_same(client):
    phone = Phone()
    push(client, *[phone.opens()] + [phone.event("noted", text="warm" * 40) for _ in range(60)])
    plain = client.get("/api/events?after=0")
    packed = client.get("/api/events?after=0", headers={"Accept-Encoding": "gzip, br"})
    assert (plain.headers.get("Content-Encoding"), packed.headers["Content-Encoding"]) == (None, "gzip")
    assert len(packed.data) < 0.4 * len(plain.data)
    assert gzip.decompress(packed.data) == plain.data
    assert "Content-Encoding" not in client.get("/api/health", headers={"Accept-Encoding": "gzip"}).headers
