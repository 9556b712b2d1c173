"""What a burst plan promises: common practice, energy, limits, properties, problems."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core.field_kinds import BASES
from amberbench.engine.core.problems import Problem
from amberbench.engine.core.sources import SOURCES
from tests.conforming import conforms

HALF_BLOCK_KG = 2.5 * 0.45359237
WINDOW = {"window_low_c": (160 - 32) / 1.8, "window_high_c": (170 - 32) / 1.8}  # 160–170 °F


def plan(rated_w=1000.0, **changes):
    request = {"mass_kg": HALF_BLOCK_KG, "oven": {"rated_w": rated_w}} | WINDOW | changes
    return catalogue.call("melt.plan", request)


def problem(**changes):
    with pytest.raises(Problem) as caught:
        plan(**changes)
    return caught.value


def seconds(reply):
    return sum(burst["seconds_s"] for burst in reply["bursts"])


# Common practice, no published source --------------------------------------------------------------------------------


BOWL = {"vessel": {"mass_kg": 0.4}}


@pytest.mark.parametrize("rated_w", [800.0, 900.0, 1000.0, 1100.0])
def test_common_practice_half_a_block_is_near_120_f_after_two_minutes(rated_w):
    # About 120 °F (± 10 °F) after two one-minute bursts on high, each with a stir.
    first_two = {"history": [{"kind": "burst", "seconds_s": 60.0}, {"kind": "stir"}] * 2}
    request = {"mass_kg": HALF_BLOCK_KG, "oven": {"rated_w": rated_w}} | WINDOW | BOWL | first_two
    bulk_f = 32 + 1.8 * catalogue.call("melt.next_burst", request)["bulk_c"]
    assert 110 <= bulk_f <= 130


@pytest.mark.parametrize("rated_w", [800.0, 900.0, 1000.0, 1100.0, 1200.0])
def test_common_practice_half_a_block_is_in_the_window_after_three_to_five_bursts(rated_w):
    reply = plan(rated_w, **BOWL)
    assert 3 <= len(reply["bursts"]) <= 5
    assert WINDOW["window_low_c"] <= reply["bursts"][-1]["expected_c"] <= WINDOW["window_high_c"]


# Energy --------------------------------------------------------------------------------------------------------------


def test_energy_is_the_heat_of_caramel_and_the_share_of_the_bowl():
    reply = plan(vessel={"mass_kg": 0.8})
    last_c = reply["bursts"][-1]["expected_c"]
    heat = {"material": "caramel", "mass_kg": HALF_BLOCK_KG, "from_c": 21.0, "to_c": last_c}
    caramel_j = catalogue.call("materials.heat", heat)["energy_j"]
    bowl_j = 0.6 * 0.8 * 800.0 * (last_c - 21.0)
    assert reply["energy_j"] == pytest.approx(caramel_j + bowl_j, rel=1e-6)


def test_oven_gives_what_the_bowl_takes_up_and_loses():
    reply = plan()
    given_j = 600.0 * sum(burst["seconds_s"] - 2.5 for burst in reply["bursts"])
    assert 1.0 < given_j / reply["energy_j"] < 1.1


# Limits --------------------------------------------------------------------------------------------------------------


def test_caramel_that_starts_in_the_window_needs_no_burst():
    reply = plan(start_c=74.0)
    assert reply["bursts"] == []
    assert reply["total_s"] == reply["energy_j"] == 0.0


def test_caramel_a_degree_short_needs_one_brief_burst():
    bursts = plan(start_c=70.0)["bursts"]
    assert len(bursts) == 1
    assert bursts[0]["seconds_s"] <= 25.0


def test_measured_power_narrows_the_range():
    plate = plan()["bursts"][0]
    measured = plan(oven={"power_w": 600.0, "power_sd_w": 20.0})["bursts"][0]
    assert measured["expected_c"] == pytest.approx(plate["expected_c"])
    assert measured["high_c"] - measured["low_c"] < 0.6 * (plate["high_c"] - plate["low_c"])


def test_even_oven_may_run_longer():
    even = {"rated_w": 1200.0, "unevenness": 1.2}
    assert len(plan(mass_kg=0.6, oven=even)["bursts"]) < len(plan(1200.0, mass_kg=0.6)["bursts"])


def test_oven_without_turntable_is_taken_to_heat_less_evenly():
    def unevenness(**oven):
        rows = {row["field"]: row for row in plan(oven={"rated_w": 900.0} | oven)["inputs"]}
        return rows["oven.unevenness"]

    assert unevenness(turntable=False)["value"] > unevenness(turntable=True)["value"]
    assert unevenness(turntable=True)["basis"] == "assumed"


# Properties ----------------------------------------------------------------------------------------------------------

masses = st.floats(0.3, 4.0)
plates = st.floats(600.0, 1300.0)


@given(masses, plates, st.booleans(), st.sampled_from([1, 5, 10]), st.floats(0.1, 1.5))
def test_strong_end_never_passes_the_limit_and_the_last_burst_lands_in_the_window(mass, plate, turn, step, bowl):
    oven = {"rated_w": plate, "turntable": turn}
    reply = plan(mass_kg=mass, oven=oven, step_s=step, vessel={"mass_kg": bowl})
    conforms("melt.plan", reply)
    for burst in reply["bursts"]:
        assert burst["hottest_c"] <= 93.3
        assert burst["seconds_s"] <= 60.0
        assert burst["seconds_s"] % step == 0
        assert burst["low_c"] < burst["expected_c"] < burst["high_c"] <= burst["hottest_c"] + 0.5
    expected = [burst["expected_c"] for burst in reply["bursts"]]
    assert expected == sorted(expected)
    assert WINDOW["window_low_c"] <= expected[-1] <= WINDOW["window_high_c"]


@given(masses, plates)
def test_bulk_stays_below_the_windows_top_at_the_strong_end(mass, plate):
    for burst in plan(plate, mass_kg=mass)["bursts"]:
        strong_c = burst["expected_c"] + 1.645 / 1.2816 * (burst["high_c"] - burst["expected_c"])
        assert strong_c <= WINDOW["window_high_c"] + 0.01


@given(masses, st.floats(1.1, 2.0))
def test_more_caramel_takes_more_time(mass, times):
    assert seconds(plan(mass_kg=mass * times)) >= seconds(plan(mass_kg=mass))


@given(st.floats(0.5, 3.0), st.floats(6.0, 8.0))
def test_hotter_window_takes_more_energy(mass, higher):
    hotter = {"window_low_c": 68.0 + higher, "window_high_c": 74.0 + higher}
    cooler = {"window_low_c": 68.0, "window_high_c": 74.0}
    assert plan(mass_kg=mass, **hotter)["energy_j"] > plan(mass_kg=mass, **cooler)["energy_j"]


# What is shown -------------------------------------------------------------------------------------------------------


def test_every_assumed_constant_is_among_the_inputs_with_a_known_source():
    rows = {row["field"]: row for row in plan(vessel={"mass_kg": 0.8})["inputs"]}
    for field in ("melt.dead_s", "melt.rated_share", "melt.load_factor", "melt.vessel_share", "oven.unevenness"):
        assert field in rows
    for row in rows.values():
        assert row["basis"] in BASES
        assert row["source"] is None or row["source"] in SOURCES


def test_measured_power_leaves_plate_and_load_factor_out_of_the_inputs():
    named = {row["field"] for row in plan(oven={"power_w": 600.0})["inputs"]}
    assert not named & {"melt.rated_share", "melt.load_factor"}


# Problems ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"window_low_c": 77.0, "window_high_c": 71.0}, "window_low_c", "window_upside_down"),
        ({"window_low_c": 74.0, "window_high_c": 74.0}, "window_low_c", "window_upside_down"),
        ({"window_high_c": 83.0}, "window_high_c", "line_above_line"),
        ({"warn_c": 86.0}, "warn_c", "line_above_line"),
        ({"stop_c": 94.0}, "stop_c", "line_above_line"),
        ({"start_c": 80.0}, "start_c", "start_above_window"),
        ({"oven": {}}, "oven.rated_w", "oven_without_power"),
        ({"step_s": 7}, "step_s", "not_an_option"),
        ({"burst_s": 10, "step_s": 15}, "burst_s", "too_low"),
        ({"mass_kg": 0.05, "oven": {"power_w": 2000.0}, "step_s": 30}, "step_s", "step_too_coarse"),
        ({"mass_kg": 10.0, "oven": {"rated_w": 200.0}}, "mass_kg", "oven_too_weak"),
    ],
)
def test_request_that_makes_no_sense_is_refused(changes, field, code):
    caught = problem(**changes)
    assert (caught.field, caught.code) == (field, code)


# Power levels --------------------------------------------------------------------------------------------------------


def test_half_a_kilogram_in_a_strong_oven_with_coarse_steps_is_planned_at_half_power():
    strong = {"rated_w": 1200.0, "levels_percent": [100, 50]}
    for mass_kg, bowl_kg in ((0.5, 0.4), (0.3, 0.2)):
        bursts = plan(mass_kg=mass_kg, step_s=15, oven=strong, vessel={"mass_kg": bowl_kg})["bursts"]
        assert 50 in {burst["level_percent"] for burst in bursts}
        assert WINDOW["window_low_c"] <= bursts[-1]["expected_c"] <= WINDOW["window_high_c"]
        assert {burst["seconds_s"] % 15 for burst in bursts} == {0}
    little = {"mass_kg": 0.28, "step_s": 15, "vessel": {"mass_kg": 0.2}}
    assert problem(**little, oven={"rated_w": 1200.0}).code == "step_too_coarse"
