"""A mistake of ours on the server: logged, counted, told plainly; no fact is lost and no other batch stops."""

from typing import Any

import pytest
from sqlalchemy import update

from amberbench.engine import catalogue
from amberbench.engine.batch import folds
from amberbench.services import folding
from amberbench.store import writing
from amberbench.store.models import BatchRow
from tests.bench import SLAB_REQUEST
from tests.log import Phone, push
from tests.problem_shape import assert_problem


def mistaken(*_: Any) -> Any:
    """As a wrong name or a forgotten argument is."""
    return None + 1  # type: ignore[operator]


def errors(client) -> int:
    return client.get("/api/health").get_json()["errors"]


def record(client, phone: Phone) -> dict[str, Any]:
    return client.get(f"/api/batches/{phone.batch_id}").get_json()


@pytest.fixture
def broken(client, monkeypatch) -> Phone:
    """A batch that was pushed, with another one, while the fold of cutting was a mistake of ours."""
    phone, other = Phone(), Phone()
    with monkeypatch.context() as planted:
        planted.setitem(folds.FOLDS, "freed", mistaken)
        answers = push(
            client, phone.opens(), phone.event("freed"), *other.whole_batch(), phone.event("noted", text="x")
        )
        assert {one["result"] for one in answers} == {"stored"}
        assert record(client, other)["summary"]["step"] == "closed"
        assert record(client, other)["broken"] is None
    return phone


def test_mistake_in_a_fold_loses_no_event_and_stops_no_other_batch(client, broken):
    kept = record(client, broken)
    assert [one["kind"] for one in kept["events"]] == ["batch_opened", "freed", "noted"]
    assert kept["run"] is None
    assert kept["broken"].startswith("TypeError: ")
    assert len(client.get("/api/events?after=0&limit=500").get_json()["events"]) > 10


def test_mistake_is_logged_with_its_trace_and_counted(client, monkeypatch, caplog):
    before, phone = errors(client), Phone()
    monkeypatch.setitem(folds.FOLDS, "freed", mistaken)
    push(client, phone.opens(), phone.event("freed"))
    assert errors(client) == before + 1
    assert "in mistaken" in caplog.text
    name = record(client, phone)["broken"].split("(")[-1].rstrip(")")
    assert name in caplog.text


def test_mistake_in_the_short_way_of_folding_is_told_though_the_whole_log_folds(client, monkeypatch, caplog):
    before, phone = errors(client), Phone()
    push(client, phone.opens())
    monkeypatch.setattr("amberbench.services.folding._append_to_run", mistaken)
    push(client, phone.event("ready_checked"))
    assert record(client, phone)["summary"]["step"] == "weigh"
    assert (record(client, phone)["broken"], errors(client)) == (None, before + 1)
    assert "without its whole log" in caplog.text


def test_batch_is_folded_again_by_the_next_version(app, client, broken):
    with app.app_context():
        folding.fold_outdated()
        assert record(client, broken)["run"] is None
        with writing() as session:
            session.execute(update(BatchRow).values(engine_version="older"))
        folding.fold_outdated()
    again = record(client, broken)
    assert (again["broken"], again["summary"]["step"]) == (None, "flip")


def test_plan_that_is_none_is_no_mistake_of_ours(client, caplog):
    before, phone = errors(client), Phone()
    push(client, phone.event("batch_opened", plan={"reply": {"cut": 7}}))
    assert errors(client) == before
    assert (record(client, phone)["run"], record(client, phone)["broken"]) == (None, None)
    assert "could not be folded" in caplog.text


def test_mistake_in_a_planner_is_told_as_one_by_a_name_that_the_log_has(client, monkeypatch, caplog):
    before = errors(client)
    monkeypatch.setitem(catalogue.FUNCTIONS, "slab.plan", mistaken)
    told = assert_problem(client.post("/api/plans/slab", json=SLAB_REQUEST), 500)
    assert told["errors"] == []
    assert told["instance"].removeprefix("urn:uuid:") in caplog.text
    assert "in mistaken" in caplog.text
    assert errors(client) == before + 1
    monkeypatch.undo()
    assert client.post("/api/plans/slab", json=SLAB_REQUEST).status_code == 200


def test_mistake_in_a_projection_keeps_the_facts(client, monkeypatch):
    before, phone, other = errors(client), Phone(), Phone()
    usual = folding.run_values
    monkeypatch.setattr(folding, "run_values", lambda run: mistaken() if run["lot"] == "B-2" else usual(run))
    answers = push(client, phone.opens(), phone.event("weighed", kg=1.8, lot="B-2"), *other.whole_batch())
    assert {one["result"] for one in answers} == {"stored"}
    assert record(client, phone)["broken"].startswith("TypeError")
    assert record(client, other)["summary"]["step"] == "closed"
    assert errors(client) > before


def test_mistake_in_learning_leaves_the_other_lessons(client, monkeypatch):
    one, other = Phone(), Phone()
    push(client, *one.whole_batch(), *other.whole_batch())
    usual = catalogue.FUNCTIONS["learn.contribution"]
    monkeypatch.setitem(
        catalogue.FUNCTIONS,
        "learn.contribution",
        lambda request: mistaken() if request["batch_id"] == one.batch_id else usual(request),
    )
    before = errors(client)
    lessons = {
        row["batch_id"]: row["contribution"] for row in client.get("/api/contributions").get_json()["contributions"]
    }
    assert lessons[one.batch_id] is None
    assert lessons[other.batch_id] is not None
    assert errors(client) == before + 1
