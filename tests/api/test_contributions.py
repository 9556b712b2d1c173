"""What closed batches teach: told once, left out with a reason, taken in again."""

from sqlalchemy import select, text

from amberbench.engine import catalogue
from amberbench.services import folding
from amberbench.store import reading, writing
from amberbench.store.models import ContributionRow
from tests.bench import planned_bowl, planned_slab
from tests.conforming import is_document
from tests.log import Phone, push


def taught(client):
    document = client.get("/api/contributions").get_json()
    is_document("Contributions", document)
    return document["contributions"]


def kept(app):
    with app.app_context(), reading() as session:
        return [tuple(row) for row in session.execute(select(*ContributionRow.__table__.columns))]


def closed_batch(client, plan=None):
    phone = Phone()
    events = phone.whole_batch()
    events[0]["body"]["plan"] = (plan or planned_slab()) | {"oven_id": "oven", "base_id": "stone", "product_id": "sea"}
    push(client, *events)
    return phone


def test_closed_batch_teaches_what_the_engine_reads_out_of_it(client):
    phone = closed_batch(client)
    running = Phone()
    push(client, running.opens())
    (one,) = taught(client)
    record = client.get(f"/api/batches/{phone.batch_id}").get_json()
    asked = {"batch_id": phone.batch_id, "plan": record["plan"], "run": record["run"]}
    assert one["contribution"] == catalogue.call("learn.contribution", asked)["contribution"]
    assert one["contribution"]["pieces"] == {"planned": planned_slab()["reply"]["cut"]["pieces"], "counted": 205}
    assert (one["name"], one["reason"]) == ("Sea salt squares", None)
    assert one["closed_at_ms"] == record["summary"]["closed_at_ms"]


def test_batch_left_out_says_why_and_counts_no_longer_until_taken_in(client):
    phone = closed_batch(client)
    push(client, phone.event("left_out", left_out=True, reason="The oven door stood open"))
    (one,) = taught(client)
    assert (one["reason"], one["contribution"]["left_out"]) == ("The oven door stood open", True)
    assert catalogue.call("learn.fold", {"batches": [one["contribution"]]})["n"] == 0
    push(client, phone.event("left_out", left_out=False))
    (one,) = taught(client)
    assert (one["reason"], one["contribution"]["left_out"]) == (None, False)


def test_leaving_out_needs_a_reason_and_a_closed_batch(client):
    phone, running = closed_batch(client), Phone()
    push(client, phone.event("left_out", left_out=True, reason=" "))
    push(client, running.opens(), running.event("left_out", left_out=True, reason="too early"))
    assert [one["reason"] for one in taught(client)] == [None]
    for batch_id, why in ((phone.batch_id, "without_reason"), (running.batch_id, "not_closed")):
        run = client.get(f"/api/batches/{batch_id}").get_json()["run"]
        assert [one["why"] for one in run["ignored"]] == [why]


def test_teaching_is_worked_out_once_and_anew_after_a_rebuild(app, client, monkeypatch):
    closed_batch(client)
    before = taught(client)
    monkeypatch.setattr(catalogue, "call", None)  # nothing is asked of the engine again
    assert taught(client) == before
    monkeypatch.undo()
    rows = kept(app)
    with app.app_context():
        with writing() as session:
            session.execute(text("UPDATE contribution SET document = NULL"))
        folding.rebuild()
    assert kept(app) == []
    assert taught(client) == before
    assert kept(app) == rows


def test_batch_that_cannot_be_read_teaches_nothing_and_hinders_nobody(app, client):
    closed_batch(client)
    broken = closed_batch(client)
    with app.app_context(), writing() as session:
        session.execute(text("UPDATE batch SET run = '{}' WHERE batch_id = :one"), {"one": broken.batch_id})
    assert sorted((one["contribution"] is None) for one in taught(client)) == [False, True]


def test_bowl_of_chocolate_is_listed_and_takes_no_place_among_those_that_teach(client):
    phone = Phone()
    events = [phone.event("batch_opened", plan=planned_bowl()), phone.event("weighed", kg=1.5), phone.event("closed")]
    push(client, *events)
    (one,) = client.get("/api/batches").get_json()["batches"]
    assert (one["kind"], one["pieces"], one["caramel_kg"], one["good_kg"]) == ("chocolate", None, 1.5, None)
    assert taught(client) == []
