"""What is described of documents holds of the real ones, whatever kind of batch they belong to."""

import random
from typing import Any

import pytest

from amberbench.engine import catalogue, documents, fields
from amberbench.engine.batch.courses import KIND_OF
from amberbench.engine.core import field_kinds
from amberbench.engine.learning.fields import KIND_BY_FUNCTION
from amberbench.engine.products import KINDS
from tests import strategies_batch
from tests.bench import Bench
from tests.cluster_simulation import LayingBench
from tests.conforming import conforms, is_body, is_document
from tests.gathered import PLANS_OF_ALL
from tests.shops import Shop
from tests.workers import SimulatedWorker


def parts(field: dict[str, Any]) -> list[dict[str, Any]]:
    """A field and all that is described below it, references not followed."""
    below = [*field.get("fields", {}).values(), *field.get("alternatives", [])]
    if "item" in field:
        below.append(field["item"])
    return [field, *(part for one in below for part in parts(one))]


def everything() -> list[tuple[str, dict[str, Any]]]:
    """(name, description) of every function's sides, of every body and of every document."""
    sides = [(f"{name} {side}", both[side]) for name, both in fields.FUNCTIONS.items() for side in ("request", "reply")]
    bodies = [(f"event {kind}", body) for kind, body in documents.BODIES.items()]
    records = [(name, field_kinds.record(known, "all of it")) for name, known in sides + bodies]
    return records + list(documents.DOCUMENTS.items())


@pytest.mark.parametrize(("name", "field"), everything(), ids=[name for name, _ in everything()])
def test_what_a_description_refers_to_is_described(name, field):
    named = [one["of"] for one in parts(field) if "of" in one]
    assert [one for one in named if one not in documents.DOCUMENTS] == []


def test_only_what_may_be_anything_is_left_open():
    open_places = {
        (name, one["meaning"])
        for name, field in everything()
        for one in parts(field)
        if one["kind"] == "document" and "of" not in one
    }
    assert {meaning for _, meaning in open_places} == {
        "the value used",
        "a number, a word, a list",
        "what was given",
        "a word or a number",
        "its value; null takes it back",
        # What the planner of its kind is asked; `needs.plan` hands it on to that planner, which checks it.
        "its request, without how many",
    }


def test_every_kind_has_a_plan_here():
    assert {planned()["kind"] for planned in PLANS_OF_ALL} == {kind.name for kind in KINDS}


@pytest.mark.parametrize("planned", PLANS_OF_ALL)
def test_a_plan_is_what_its_description_says(planned):
    plan = {"name": "", "lot": None} | planned()
    is_document("PlanDocument", plan)
    is_document("PlanTaken", {name: plan[name] for name in plan if name != "request"} | {"reply": taken(plan)})


def taken(plan: dict[str, Any]) -> dict[str, Any]:
    """What a run takes of a plan's reply."""
    known = documents.DOCUMENTS[f"{plan['kind'].capitalize()}PlanTaken"]["fields"]["reply"]["fields"]
    return cut_to(known, plan["reply"])


def cut_to(known: dict[str, Any], reply: dict[str, Any]) -> dict[str, Any]:
    return {
        name: cut_to(field["fields"], reply[name]) if field["kind"] == "record" and reply[name] else reply[name]
        for name, field in known.items()
        if name in reply
    }


@pytest.mark.parametrize("planned", PLANS_OF_ALL)
def test_what_the_engine_checks_of_a_plan_is_in_what_a_run_takes_of_it(planned):
    plan = planned()
    described = documents.DOCUMENTS[f"{plan['kind'].capitalize()}PlanTaken"]["fields"]["reply"]["fields"]
    checked = KIND_OF[plan["kind"]].taken(plan["reply"])
    assert set(checked) - {"dip", "room", "warnings"} <= set(described)
    for name, field in checked.items():
        if field["kind"] == "record" and name in described and described[name]["kind"] == "record":
            assert set(field["fields"]) <= set(described[name]["fields"]), name


@pytest.mark.parametrize("planned", PLANS_OF_ALL)
def test_a_run_folds_the_same_from_what_it_takes_of_a_plan(planned):
    bench = Bench(planned())
    bench.does("ready_checked", 60)
    whole = bench.run
    bench.plan = {name: bench.plan[name] for name in bench.plan if name != "request"} | {"reply": taken(bench.plan)}
    assert bench.run == whole


def holds(run: dict[str, Any], at_ms: float) -> None:
    """A run and what is advised of it are as described, and so is what its button writes."""
    is_document("Run", run)
    advice = catalogue.call("run.advise", {"run": run, "at_ms": at_ms})
    is_document("Advice", advice)
    for button in [advice["action"], *advice["choices"]]:
        if button and "kind" in button:
            is_body(button["kind"], button["body"])


@pytest.mark.parametrize("seed", range(40))
def test_a_batch_is_as_described_after_every_event(seed):
    bench = strategies_batch.any_bench(random.Random(seed))
    events, bench.events = bench.events, []
    for event in events:
        bench.events.append(event)
        holds(bench.run, event["at_ms"] + 1000.0)


@pytest.mark.parametrize("seed", range(3))
def test_a_simulated_laying_is_as_described(seed):
    bench = SimulatedWorker(LayingBench(random.Random(seed))).works()
    holds(bench.run, bench.now_ms)


@pytest.mark.parametrize("seed", range(2))
def test_a_simulated_shop_is_as_described(seed):
    shop = Shop(f"documents/{seed}")
    for _ in range(3):
        batch = shop.batch()
        is_document("Run", batch.run)
        is_document("PlanDocument", batch.plan)
        is_document("Contribution", batch.contribution)
    is_document("Measured", shop.measured())


@pytest.mark.parametrize("function", KIND_BY_FUNCTION)
def test_a_plan_that_learns_is_asked_with_what_the_document_of_requests_says(function):
    plans = [planned() for planned in PLANS_OF_ALL]
    request = next(plan["request"] for plan in plans if KIND_BY_FUNCTION[function].name == plan["kind"])
    applied = {"function": function, "request": request, "measured": Shop("documents").measured()}
    conforms("learn.apply", catalogue.call("learn.apply", applied))
