"""A mistake of ours comes out as one: nothing takes it for a plan that is none, or for a wrong request."""

import copy
import json
from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.batch import decisions, folds
from amberbench.engine.core.problems import Problem
from amberbench.engine.steps.melt import plan as melt
from amberbench.engine.steps.pour import plan as pour
from tests.bench import NINE_OCLOCK_MS, SLAB_REQUEST, Bench, planned_bowl, planned_slab
from tests.gathered import PLANS_OF_ALL


def mistaken(*_: Any) -> Any:
    """As a wrong name or a forgotten argument is."""
    return None + 1  # type: ignore[operator]


def refused(name: str, **request: Any) -> tuple[str, str]:
    with pytest.raises(Problem) as caught:
        catalogue.call(name, request)
    return caught.value.field, caught.value.code


def test_mistake_in_a_fold_is_no_bad_plan(monkeypatch):
    bench = Bench()
    bench.does("cut", 60)
    monkeypatch.setitem(folds.FOLDS, "cut", mistaken)
    with pytest.raises(TypeError):
        catalogue.call("run.replay", {"plan": bench.plan, "events": bench.events})


def test_mistake_in_a_fold_is_no_bad_run(monkeypatch):
    bench = Bench()
    before, event = bench.run, bench.events[0] | {"kind": "cut", "id": "x", "at_ms": bench.now_ms}
    monkeypatch.setitem(folds.FOLDS, "cut", mistaken)
    with pytest.raises(TypeError):
        catalogue.call("run.apply", {"run": before, "event": event})


def test_mistake_in_a_decision_comes_out(monkeypatch):
    bench = Bench()
    fact = {"kind": "burst_started", "at_ms": bench.now_ms, "body": {"seconds_s": 60}}
    monkeypatch.setitem(decisions.DECIDES, "burst_started", mistaken)
    with pytest.raises(TypeError):
        catalogue.call("run.decide", {"run": bench.run, "facts": [fact]})


def test_mistake_in_a_planner_comes_out_of_the_plan_and_of_the_next_step(monkeypatch):
    bench = Bench()
    bench.sets_up()
    monkeypatch.setattr(melt, "next_burst", mistaken)
    with pytest.raises(TypeError):
        catalogue.call("run.advise", {"run": bench.run, "at_ms": bench.now_ms})
    monkeypatch.setattr(pour, "plan", mistaken)
    with pytest.raises(TypeError):
        catalogue.call("slab.plan", SLAB_REQUEST)


def test_mistake_in_learning_comes_out(monkeypatch):
    bench = Bench()
    bench.does("closed", 60)
    monkeypatch.setattr("amberbench.engine.learning.contribution.compared", mistaken)
    with pytest.raises(TypeError):
        catalogue.call("learn.contribution", {"batch_id": "b", "plan": bench.plan, "run": bench.run})


@pytest.mark.parametrize(
    "plan",
    [
        {},
        {"reply": 7},
        {"reply": {}},
        {"kind": ["slab"], "reply": {}},
        {"kind": "none", "reply": {}},
        {"kind": None},
    ],
)
def test_what_is_no_plan_is_refused(plan):
    assert refused("run.replay", plan=plan, events=[]) == ("plan", "not_a_plan")


@pytest.mark.parametrize("planned", PLANS_OF_ALL)
def test_plan_that_lacks_something_its_run_reads_is_refused_and_no_more_than_that_is_asked(planned):
    """Each member of the reply taken away, and each replaced by junk: a run or a plan that is none, never a mistake."""
    plan, missing = planned(), 0
    for name in plan["reply"]:
        for junk in (None, "junk", [1], {"x": 1}):
            other = copy.deepcopy(plan)
            other["reply"][name] = junk
            text = json.dumps({"plan": other, "events": []})
            answer = json.loads(catalogue.call_text("run.replay", text))
            missing += answer.get("problem", {}).get("code") == "not_a_plan"
    assert missing > 3 or plan["kind"] == "standup"


@pytest.mark.parametrize("planned", PLANS_OF_ALL)
def test_run_that_has_lost_a_part_is_no_run(planned):
    whole = Bench(planned()).run
    for name in ("kind", "done", "planned", "ignored", "out", "last_at_ms", "weighed_kg"):
        less = {other: whole[other] for other in whole if other != name}
        assert refused("run.advise", run=less, at_ms=NINE_OCLOCK_MS) == ("run", "not_a_run")
    assert refused("run.advise", run=whole | {"kind": "none"}, at_ms=NINE_OCLOCK_MS) == ("run", "not_a_run")


# No number is clamped in silence -----------------------------------------------------------------------------------


def test_twelve_kilograms_in_one_bowl_are_flagged_and_the_plan_stands():
    bench = Bench()
    bench.does("ready_checked", 60)
    heavy = bench.does("weighed", 60, kg=12.0)
    assert bench.run["ignored"] == [{"id": heavy, "why": "too_high"}]
    assert bench.run["melt"]["request"]["mass_kg"] == planned_slab()["reply"]["caramel_kg"]
    assert bench.advice["step"] == "weigh"
    assert (bench.advice["entry"]["low"], bench.advice["entry"]["high"]) == (0.05, 10.0)


def test_twelve_kilograms_on_a_paper_sheet_are_refused():
    sheet = {"after_ms": NINE_OCLOCK_MS, "now_ms": NINE_OCLOCK_MS + 1e6, "weighed_kg": 12.0}
    with pytest.raises(Problem) as caught:
        catalogue.call("paper.events", sheet)
    assert (caught.value.field, caught.value.code, caught.value.high) == ("weighed_kg", "too_high", 10)


def test_twelve_kilograms_of_chocolate_are_a_bowl():
    bench = Bench(planned_bowl())
    bench.does("weighed", 60, kg=12.0)
    assert (bench.run["weighed_kg"], bench.run["ignored"]) == (12.0, [])
