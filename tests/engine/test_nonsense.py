"""Figures that cannot be are refused by name, with one that would be taken; none is passed over in silence."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests.bench import Bench, planned_clusters, planned_slab

COOLS = {"thickness_m": 0.0127, "start_c": 74.0, "room_c": 21.0, "base": "marble", "length_m": 0.4, "width_m": 0.3}
READING = [{"at_s": 1500.0, "surface_c": 45.0}]


def refused(name, request):
    with pytest.raises(Problem) as caught:
        catalogue.call(name, request)
    return caught.value


def test_a_slab_is_not_firm_a_minute_after_it_was_poured():
    touches = [{"at_s": 900.0, "firm": False}, {"at_s": 60.0, "firm": True}]
    problem = refused("cool.refit", COOLS | {"touches": touches})
    assert (problem.field, problem.code, problem.given) == ("touches[1].at_s", "firm_too_soon", 60.0)
    ready_s = catalogue.call("cool.plan", COOLS)["ready_s"]
    assert 60.0 < problem.low < ready_s
    at_first = [{"at_s": problem.low, "firm": True}]
    assert catalogue.call("cool.refit", COOLS | {"touches": at_first})["ready_s"] <= problem.low
    assert catalogue.call("cool.refit", COOLS | {"touches": [{"at_s": 60.0, "firm": False}]})["ready_s"] > 60.0


def test_a_slip_that_says_firm_at_once_teaches_nothing_of_the_base():
    def taught(*firm_after_s):
        bench = Bench(planned_slab() | {"oven_id": "oven", "base_id": "base", "product_id": "squares"})
        bench.sets_up()
        bench.melts()
        bench.taps(30)
        for at_s in firm_after_s:
            bench.does("touched", at_s, firm=True)
        bench.does("slab_read", 900 - sum(firm_after_s), surface_c=48.0)
        bench.does("slab_read", 900, surface_c=41.0)
        bench.does("slab_read", 900, surface_c=36.0)
        bench.does("closed", 60)
        found = catalogue.call("learn.contribution", {"batch_id": "b", "plan": bench.plan, "run": bench.run})
        return found["contribution"]["base"], found["contribution"]["unused"]

    slipped, honest = taught(60), taught()
    assert slipped[0] == honest[0] is not None


@pytest.mark.parametrize("plan", [planned_slab, planned_clusters])
def test_twelve_kilograms_weighed_in_are_refused_and_said_to_be(plan):
    bench = Bench(plan())
    for kind in ("ready_checked", "allergens_checked", "under_laid")[: 3 if plan is planned_clusters else 1]:
        bench.does(kind, 20)
    before = bench.run["melt"]["request"]["mass_kg"]
    weighed = bench.does("weighed", 60, kg=12.0, lot="A-117")
    assert bench.run["ignored"] == [{"id": weighed, "why": "too_high"}]
    assert (bench.advice["step"], bench.run["weighed_kg"]) == ("weigh", None)
    assert bench.run["melt"]["request"]["mass_kg"] == before
    assert bench.advice["entry"]["high"] == 10.0
    bench.does("weighed", 60, kg=bench.advice["entry"]["high"], lot="A-117")
    assert bench.run["melt"]["request"]["mass_kg"] == 10.0


def test_the_keypad_takes_no_more_good_pieces_than_twice_what_was_planned():
    bench = Bench()
    bench.sets_up()
    bench.melts()
    bench.taps(30)
    bench.does("touched", 3 * 3600, firm=True)
    while bench.advice["step"] != "count":
        bench.does("step_skipped", 10, step=bench.advice["step"])
    assert bench.advice["entry"]["high"] == 2 * bench.run["planned"]["pieces"]


def test_four_hundred_good_pieces_of_144_are_a_slip_on_paper():
    paper = {"after_ms": 0.0, "now_ms": 1e9, "planned_pieces": 144, "weighed_kg": 1.8, "weighed_at_ms": 1e6}
    problem = refused("paper.events", paper | {"pieces": 400})
    assert (problem.field, problem.code, problem.given, problem.high) == ("pieces", "too_high", 400, 288)
    told = catalogue.call("paper.events", paper | {"pieces": problem.high})["events"]
    assert {"pieces": 288}.items() <= next(one["body"] for one in told if one["kind"] == "counted").items()


def test_a_centre_of_an_inch_does_not_weigh_a_kilogram():
    inch = {"length_m": 0.0254, "width_m": 0.0254, "height_m": 0.0127}
    problem = refused("chocolate.coating", {"piece": inch, "centre_kg": 1.0, "pieces": 100})
    assert (problem.field, problem.code, problem.given) == ("centre_kg", "centre_weight", 1.0)
    for kg in (problem.low, problem.high, 0.011):
        assert catalogue.call("chocolate.coating", {"piece": inch, "centre_kg": kg, "pieces": 100})["piece_kg"] > kg
