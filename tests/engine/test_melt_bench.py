"""What the bench says while it melts: power levels, the hottest spot, pouring below the window, clocks."""

from typing import Any

import pytest

from amberbench.engine import catalogue
from tests.bench import SLAB_REQUEST, Bench, planned_clusters, planned_slab


def small_slab(levels: list[int]) -> dict[str, Any]:
    """A small slab in a strong oven whose clock has steps of 15 s."""
    changes = {"have": {"kg": 0.5}, "step_s": 15, "vessel": {"mass_kg": 0.4}, "bars_m": None}
    request = SLAB_REQUEST | changes | {"oven": {"rated_w": 1200, "levels_percent": levels}}
    return planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)}


def set_up(plan: dict[str, Any] | None = None, kg: float = 1.8) -> Bench:
    bench = Bench(plan)
    bench.does("ready_checked", 60)
    bench.does("weighed", 120, kg=kg, lot="A-117")
    return bench


def heats(bench: Bench, free: bool) -> None:
    bench.taps()
    bench.waits(bench.events[-1]["body"]["seconds_s"] + 1)
    bench.does("stirred", 40, free=free)


def warm(bench: Bench, last_c: float) -> Bench:
    """Two bursts with lumps, one that stirs freely, and what was read after it."""
    for free in (False, False, True):
        heats(bench, free)
    bench.does("read", 5, surface_c=last_c)
    return bench


def codes(actions: list[dict[str, Any]]) -> list[str]:
    return [one["code"] for one in actions]


def test_a_burst_below_full_power_says_the_level_with_the_seconds_and_the_record_keeps_it():
    bench = set_up(small_slab([100, 50]), 0.5)
    while bench.advice["say"]["code"] != "say.burst_at_level":
        heats(bench, False)
    said = bench.advice["say"]["values"]
    assert said == {"level_percent": 50, "seconds_s": bench.advice["number"]["value"]}
    heats(bench, False)
    assert bench.events[-2]["body"]["level_percent"] == 50
    assert bench.run["melt"]["bursts"][-1]["level_percent"] == 50
    assert bench.run["melt"]["history"][-2]["level_percent"] == 50


def test_a_burst_at_half_power_is_believed_to_warm_half_as_much():
    def believed_c(**level: int) -> float:
        bench = set_up()
        bench.does("burst_started", 5, seconds_s=60, **level)
        bench.waits(61)
        bench.does("stirred", 30, free=False)
        bulk_c: float = bench.advice["melt"]["bulk_c"]
        return bulk_c

    start_c = set_up().run["melt"]["request"]["start_c"]
    assert believed_c(level_percent=50) - start_c == pytest.approx(0.5 * (believed_c() - start_c), rel=0.05)


def test_below_the_window_the_large_button_is_the_next_burst_and_pouring_says_what_it_costs():
    bench = warm(set_up(), 60.0)
    for _ in range(2):
        assert bench.advice["action"]["kind"] == "burst_started"
        assert "button.pour_now_cold" in codes(bench.advice["choices"])
        bench.does("read", 5, surface_c=60.0)
    cold = next(one for one in bench.advice["choices"] if one["code"] == "button.pour_now_cold")
    bench.does(cold["kind"], 5, **cold["body"])
    assert bench.run["ignored"] == []
    assert "melt" in bench.run["done"]


def test_filling_from_a_bowl_below_the_window_says_what_it_costs():
    bench = Bench(planned_clusters())
    bench.sets_up_clusters()
    warm(bench, 55.0)
    bench.does("read", 5, surface_c=55.0)
    assert bench.advice["action"]["kind"] == "burst_started"
    assert "button.fill_now_cold" in codes(bench.advice["choices"])
    assert "button.fill_now" not in codes(bench.advice["choices"])


@pytest.mark.parametrize("surface_c", [70.0, 71.0, 72.0, 73.0, 75.0, 76.0])
def test_two_readings_at_the_bench_are_followed_by_a_decision(surface_c: float):
    bench = warm(set_up(), 62.0)
    if bench.advice["step"] == "read":
        bench.does("read", 5, surface_c=62.0)
    heats(bench, True)
    for _ in range(2):
        if bench.advice["step"] == "read":
            bench.does("read", 8, surface_c=surface_c)
    assert bench.advice["step"] in ("burst", "pour", "rest")


def test_the_hottest_spot_may_be_read_before_the_turn_and_then_is_not_asked_for_again():
    bench = set_up()
    bench.taps()
    bench.waits(61)
    assert bench.advice["step"] == "turn"
    typed = next(one["entry"] for one in bench.advice["choices"] if one["code"] == "button.read_spot")
    bench.does(typed["kind"], 5, **typed["body"], surface_c=58.0)
    assert bench.advice["step"] == "turn"
    assert "button.read_spot" not in codes(bench.advice["choices"])
    bench.taps()
    assert [one["kind"] for one in bench.run["melt"]["history"]] == ["burst", "spot", "stir"]
    assert bench.run["ignored"] == []


def test_a_spot_of_an_oven_that_is_known_is_not_asked_for():
    known = SLAB_REQUEST | {"oven": {"rated_w": 1000, "unevenness": 1.6}}
    bench = set_up(planned_slab() | {"request": known, "reply": catalogue.call("slab.plan", known)})
    bench.taps()
    bench.waits(61)
    assert "button.read_spot" not in codes(bench.advice["choices"])


@pytest.mark.parametrize("twice", [False, True])
def test_a_spot_without_a_burst_or_told_twice_does_not_fit(twice: bool):
    bench = set_up()
    if twice:
        bench.taps()
        bench.waits(61)
        bench.does("spot_read", 5, surface_c=58.0)
    bench.does("spot_read", 5, surface_c=70.0)
    assert [one["why"] for one in bench.run["ignored"]] == ["already_done" if twice else "nothing_to_stir"]


def test_who_takes_no_reading_after_a_rest_is_not_told_of_it_by_a_clock_any_more():
    bench = warm(set_up(), 62.0)
    bench.does("rested", 5, seconds_s=60)
    bench.waits(120)
    assert "rest" in [one["name"] for one in bench.advice["clocks"]]
    bench.does("step_skipped", 5, step="read")
    assert bench.advice["clocks"] == []
