"""Fills, reheats and rests of clusters, what they cost, and which weights and widths go together."""

import itertools
import math

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.steps.deposit import funnel
from tests.bench import Bench

PLAIN = {
    "deposit_kg": 0.014, "tray": {"length_m": 0.45, "width_m": 0.32}, "spread_m": 0.045, "gap_m": 0.008,
    "funnel": {"volume_m3": 0.001}, "oven": {"rated_w": 1000},
}  # fmt: skip
NARROW = {"window_low_c": 71.0, "window_high_c": 77.0}
WIDER = {"window_low_c": 71.0, "window_high_c": 82.0}
# A part of the steps, and in the long run all of them.
SAMPLED = pytest.mark.parametrize("every", [3, pytest.param(1, marks=pytest.mark.prove)])


def planned(**change):
    return catalogue.call("cluster.plan", PLAIN | change)


def refused(**change):
    with pytest.raises(Problem) as caught:
        planned(**change)
    return caught.value


def warned(reply, code):
    return next((one["values"] for one in reply["warnings"] if one["code"] == code), None)


def test_from_the_second_reheat_on_a_plan_says_what_they_take_and_which_window_needs_fewer():
    narrow, wide = planned(caramel_kg=1.134, **NARROW), planned(caramel_kg=1.134, **WIDER)
    assert (narrow["reheats"], wide["reheats"]) == (9, 1)
    told = warned(narrow, "many_reheats_wider")
    assert told == {"n": 9, "reheats_s": 9 * 200.0, "fewer": 1} | WIDER
    assert warned(wide, "many_reheats") is None
    assert warned(wide, "many_reheats_wider") is None
    # Where no wider window helps, it says what they take.
    assert warned(planned(caramel_kg=2.27, **WIDER), "many_reheats") == {"n": 2, "reheats_s": 400.0}


def test_the_window_that_is_proposed_needs_as_many_reheats_as_was_said():
    for change in ({"caramel_kg": 2.27, "second_kg": 0.006}, {"caramel_kg": 1.8}, {"caramel_kg": 3.0, "warn_c": 80.0}):
        told = warned(planned(**change, **NARROW), "many_reheats_wider")
        wider = planned(**change, window_low_c=told["window_low_c"], window_high_c=told["window_high_c"])
        # A tray that is laid again may hold more in it.
        assert wider["reheats"] <= told["fewer"] + 1
        assert told["window_high_c"] <= change.get("warn_c", 82.0)


def test_the_time_at_the_bench_counts_melting_laying_and_every_reheat():
    for change in (NARROW, WIDER):
        reply = planned(caramel_kg=1.134, **change)
        assert reply["bench_s"] == pytest.approx(reply["melt"]["total_s"] + reply["laying_s"])
        laid_s = reply["clusters"] * 60.0 / 20.0
        assert laid_s + reply["reheats"] * 200.0 <= reply["laying_s"] <= 1.25 * laid_s + reply["reheats"] * 200.0 + 1.0
    second = planned(caramel_kg=1.134, second_kg=0.006, **WIDER)
    assert second["laying_s"] > second["second"]["from_s"]


@pytest.mark.parametrize("window", [(62.0, 74.0), (71.0, 77.0), (71.0, 82.0), (65.0, 77.0)])
@pytest.mark.parametrize("second_kg", [0.0, 0.004, 0.009])
@SAMPLED
def test_fills_times_deposits_per_fill_are_never_fewer_than_deposits(window, second_kg, every):
    for step in range(0, 60, every):
        caramel_kg = 0.3 + 0.045 * step
        reply = planned(
            caramel_kg=caramel_kg, second_kg=second_kg, window_low_c=window[0], window_high_c=window[1], step_s=1
        )
        deposits = reply["clusters"] * (2 if second_kg else 1)
        assert reply["fills"] * reply["deposits_per_fill"] >= deposits
        assert reply["fill_kg"] <= reply["most_fill_kg"] + 1e-12
        assert reply["reheats"] == reply["fills"] - 1


@SAMPLED
def test_a_rest_too_small_to_heat_again_is_counted_and_told(every):
    told = []
    for step in range(0, 80, every):
        reply = planned(caramel_kg=0.6 + 0.01 * step, window_low_c=71.0, window_high_c=79.0, step_s=1)
        rest = warned(reply, "small_rest")
        assert (rest is not None) == (reply["rest_kg"] > 0.0)
        assert reply["rest_kg"] < 0.05
        if rest:
            told.append(rest)
            assert rest == {"n": math.ceil(reply["rest_kg"] / 0.014 - 1e-6), "rest_kg": reply["rest_kg"]}
    assert told


def test_a_funnel_is_never_planned_to_be_filled_over_its_brim():
    for share in (0.5, 0.75, 0.9, 1.0):
        funnel = {"volume_m3": 0.001, "fill": share}
        for kg in (0.8, 1.1, 1.4, 1.6, 2.7):
            reply = planned(caramel_kg=kg, funnel=funnel, **WIDER)
            brimful_kg = planned(caramel_kg=kg, funnel=funnel | {"fill": 1.0}, **WIDER)["most_fill_kg"]
            assert reply["fill_kg"] <= reply["most_fill_kg"] <= brimful_kg + 1e-12


def test_a_funnel_is_not_filled_over_its_brim_where_more_was_weighed_in():
    for share in (0.75, 1.0):
        rows = [{"clusters": 96, "deposit_kg": 0.014}]
        request = PLAIN | WIDER | {"rows": rows, "funnel": {"volume_m3": 0.001, "fill": share}}
        request["deposit_kg"] = None
        reply = catalogue.call("cluster.plan", request)
        bench = Bench({"kind": "cluster", "name": "Plain", "lot": "A", "request": request, "reply": reply})
        for kind in ("ready_checked", "allergens_checked", "under_laid"):
            bench.does(kind, 20)
        bench.does("weighed", 60, kg=1.15 * reply["caramel_kg"], lot="A")
        bench.melts(until="fill")
        assert bench.advice["action"]["body"]["kg"] <= reply["most_fill_kg"] + 1e-9


def test_a_funnel_that_has_run_empty_to_the_last_rounding_breaks_nothing():
    fill = planned(caramel_kg=1.0, **WIDER)["fill_request"]
    for power in range(31):
        kg = 10.0**-power
        for seconds_s in (1e-9, 1.0, 9.0, 1e4):
            for pace_kg_s in (kg / 36000.0, 1e-21, fill["pace_kg_s"]):
                cooled_c = funnel.cooled_c(fill | {"pace_kg_s": pace_kg_s}, 75.0, kg, seconds_s)
                assert fill["room_c"] - 1e-6 <= cooled_c <= 75.0


def test_ten_kilograms_in_hand_are_taken_as_they_are_typed():
    for kg in (10, 10.0, 10.000000000000002):
        assert planned(caramel_kg=kg, **WIDER)["caramel_kg"] <= 10.0 + 1e-9


@pytest.mark.parametrize("deposit_kg", [0.014, 0.0075, 0.02, 0.033])
@pytest.mark.parametrize("residue", [0.0, 0.02, 0.05])
def test_too_little_in_hand_is_refused_by_what_was_typed_and_a_weight_that_is_taken(deposit_kg, residue):
    change = {"deposit_kg": deposit_kg, "residue": residue, "spread_m": 0.05, "step_s": 1, "oven": {"rated_w": 300}}
    for kg in (0.05, 0.051, 0.055):
        if int(kg * (1 - residue) / deposit_kg) * deposit_kg / (1 - residue) < 0.05:
            problem = refused(caramel_kg=kg, **change)
            assert (problem.field, problem.code, problem.given) == ("caramel_kg", "too_little_caramel", kg)
            assert planned(caramel_kg=problem.low, **change)["clusters"] >= 1


@pytest.mark.parametrize("yield_share", [1.0, 0.9, 0.5])
def test_too_few_clusters_are_refused_by_their_number_and_one_that_is_taken(yield_share):
    def asked(number):
        rows = [{"clusters": number, "deposit_kg": 0.007}]
        return {"rows": rows, "deposit_kg": None, "spread_m": 0.035, "step_s": 1, "oven": {"rated_w": 300}}

    few = refused(yield_share=yield_share, **asked(1))
    assert (few.field, few.code, few.given) == ("rows[0].clusters", "too_little_caramel", 1)
    assert planned(yield_share=yield_share, **asked(few.low))["caramel_kg"] >= 0.05 - 1e-9
    assert refused(yield_share=yield_share, **asked(few.low - 1)).low == few.low


def test_a_second_deposit_stays_on_the_footprint_as_one_deposit_of_both_would():
    rows = [{"clusters": 10, "deposit_kg": 0.014}]
    problem = refused(deposit_kg=None, rows=rows, second_kg=0.05)
    assert (problem.field, problem.code, problem.given) == ("second_kg", "second_runs_off", 0.05)
    both_kg = 0.014 + problem.high
    assert planned(deposit_kg=None, rows=rows, second_kg=problem.high, **WIDER)["clusters"] == 10
    # As heavy as a single deposit of this width may be.
    assert planned(deposit_kg=None, rows=[{"clusters": 10, "deposit_kg": both_kg}])["clusters"] == 10
    heavier = refused(deposit_kg=None, rows=[{"clusters": 10, "deposit_kg": both_kg * 1.01}])
    assert heavier.code == "spread_too_narrow"


def test_half_a_gram_does_not_spread_to_45_millimetres():
    problem = refused(deposit_kg=0.0005, caramel_kg=1.0)
    assert (problem.field, problem.code, problem.given) == ("spread_m", "spread_too_wide", 0.045)
    assert planned(deposit_kg=0.0005, caramel_kg=1.0, spread_m=problem.high, **WIDER)["clusters"] == 1960


def test_more_nuts_than_a_cluster_covers_are_refused_with_a_number_that_is_taken():
    for kg_each, count in ((0.2, 1), (0.002, 100), (0.05, 4)):
        under = {"material": "pecan", "kg_each": kg_each, "count": count}
        problem = refused(caramel_kg=1.0, under=[under])
        assert problem.code == "too_much_under"
        name = problem.field.removeprefix("under[0].")
        assert planned(caramel_kg=1.0, under=[under | {name: problem.high}], **WIDER)["clusters"] == 70
    usual = [{"material": "pecan", "kg_each": 0.0016, "count": 5}, {"material": "pretzel", "kg_each": 0.001}]
    assert planned(caramel_kg=1.0, under=usual, **WIDER)["clusters"] == 70


def test_a_larger_funnel_or_a_slower_hand_never_shortens_how_long_a_fill_stays_warm_and_nothing_jumps():
    def safe(**change):
        reply = planned(caramel_kg=3.0, **WIDER, **change)
        return reply["safe_s"], reply["stands_s"]

    by_volume = [safe(funnel={"volume_m3": 0.0004 + 0.00001 * step}) for step in range(120)]
    by_pace = [safe(deposits_per_min=60.0 - 0.5 * step) for step in range(110)]
    for course in (by_volume, by_pace):
        for column in (0, 1):
            values = [one[column] for one in course]
            for before, after in itertools.pairwise(values):
                assert before - 1e-6 <= after <= before * 1.03
    # As it empties it cools no slower than where it stands.
    assert all(safe_s <= stands_s + 1e-6 for safe_s, stands_s in by_volume + by_pace)
