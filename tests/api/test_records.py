"""What a phone starts from, and looking back."""

from tests.bench import planned_slab
from tests.conforming import is_document
from tests.log import BEGUN, Phone, push, uuid7
from tests.problem_shape import assert_problem

DAY_MS = 24 * 3600 * 1000


def test_record_shows_planned_and_happened(client):
    phone = Phone()
    push(client, *phone.whole_batch())
    record = client.get(f"/api/batches/{phone.batch_id}").get_json()
    is_document("ServerRecord", record)
    assert record["plan"] == planned_slab()
    summary = record["summary"]
    assert summary["name"] == planned_slab()["name"]
    assert (summary["kind"], summary["device_id"], summary["events"]) == ("slab", "phone-a", 11)
    assert (summary["pieces"], summary["caramel_kg"], summary["step"]) == (205, 1.8, "closed")
    assert summary["good_kg"] == 205 * planned_slab()["reply"]["cut"]["piece_kg"]
    assert summary["closed_at_ms"] - summary["opened_at_ms"] == 10_000


def test_open_batch_shows_its_step_and_what_is_planned(client):
    phone = Phone()
    push(client, phone.opens(), phone.event("ready_checked"))
    (summary,) = client.get("/api/batches").get_json()["batches"]
    assert (summary["step"], summary["closed_at_ms"], summary["good_kg"]) == ("weigh", None, None)
    assert summary["pieces"] == planned_slab()["reply"]["cut"]["pieces"]


def test_list_comes_newest_first_in_pages_without_gaps(client):
    ids = []
    for number in range(7):
        phone = Phone()
        phone.now_ms += (number // 2) * 60_000  # two by two at the same instant
        push(client, phone.opens())
        ids.append(phone.batch_id)
    got, before = [], ""
    while True:
        page = client.get(f"/api/batches?limit=3{before}").get_json()
        is_document("Batches", page)
        got += page["batches"]
        if not page["more"]:
            break
        before = f"&before={got[-1]['batch_id']}"
    assert sorted(one["batch_id"] for one in got) == sorted(ids)
    opened = [one["opened_at_ms"] for one in got]
    assert opened == sorted(opened, reverse=True)
    assert client.get(f"/api/batches?before={uuid7()}").get_json()["batches"] == []


def test_snapshot_holds_open_batches_and_summaries_of_ninety_days(client, clock):
    closed, running = Phone(), Phone()
    push(client, *closed.whole_batch())
    push(client, running.opens(), running.event("ready_checked"))
    snapshot = client.get("/api/snapshot").get_json()
    is_document("Snapshot", snapshot)
    assert {one["batch_id"] for one in snapshot["events"]} == {None, running.batch_id}
    assert {one["batch_id"] for one in snapshot["summaries"]} == {running.batch_id, closed.batch_id}
    assert snapshot["cursor"] == BEGUN + 13
    assert snapshot["shop"] == client.get("/api/shop").get_json()
    clock.now_ms += 91 * DAY_MS
    later = client.get("/api/snapshot").get_json()
    assert {one["batch_id"] for one in later["summaries"]} == {running.batch_id}


def test_nobodys_batch_is_not_found(client):
    assert_problem(client.get(f"/api/batches/{uuid7()}"), 404)


def test_list_says_what_a_batch_took_of_lots_and_nothing_once_it_is_taken_back(client):
    phone = Phone()
    opening = phone.opens()
    taken = phone.event("weighed", kg=1.8, lot="118", lots=[{"lot_id": "l-118", "amount": 1.8}])
    push(client, opening, taken)

    def uses():
        (row,) = client.get("/api/batches").get_json()["batches"]
        return [(one["lot_id"], one["amount"]) for one in row["label"]["uses"]]

    assert uses() == [("l-118", 1.8)]
    push(client, phone.event("undone", event_id=taken["id"]))
    assert uses() == []
