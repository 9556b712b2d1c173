"""Warm rooms: caramel is ready at one temperature everywhere; where no bench brings it there, a chill does."""

import itertools

import numpy as np
import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.physics import convection
from amberbench.engine.steps.cool.chill_fields import as_told_s
from tests.bench import SLAB_REQUEST
from tests.strategies_deposit import ON_NUTS

BASES = ("marble", "granite", "steel_sheet", "aluminium_tray", "wood_board")
ROOMS = [
    10.0,
    15.0,
    18.0,
    20.0,
    22.0,
    23.0,
    24.0,
    25.0,
    25.9,
    26.0,
    26.1,
    26.5,
    27.0,
    28.0,
    30.0,
    33.0,
    36.9,
    37.1,
    41.0,
]


def cooled(**changes):
    return catalogue.call("cool.plan", {"thickness_m": 0.0127} | changes)


def milestones(reply):
    return {one["name"]: one["at_s"] for one in reply["milestones"]}


# The slab ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("base", BASES)
@pytest.mark.parametrize("thickness_m", [0.006, 0.0127, 0.025])
def test_slab_is_never_ready_sooner_in_a_warmer_room(base, thickness_m):
    """It was: 289, 278 and 264 minutes at 23, 26 and 30 °C; tacky, firm and free turned round as well."""
    replies = [cooled(base=base, thickness_m=thickness_m, room_c=room_c) for room_c in ROOMS]
    for cooler, warmer in itertools.pairwise(replies):
        for name in ("ready_low_s", "ready_s", "ready_high_s"):
            assert warmer[name] >= cooler[name], name
        for name in ("skin", "tacky", "firm", "free"):
            assert milestones(warmer)[name] >= milestones(cooler)[name], name


@pytest.mark.parametrize("room_c", [20.0, 26.0, 28.0, 32.0])
def test_thicker_slab_is_ready_later_and_chilled_longer(room_c):
    replies = [cooled(thickness_m=thickness_mm / 1000.0, room_c=room_c) for thickness_mm in range(4, 40, 2)]
    for thinner, thicker in itertools.pairwise(replies):
        assert thicker["ready_s"] > thinner["ready_s"]
        if room_c > 26.0:
            assert thicker["chill"]["seconds_s"] > thinner["chill"]["seconds_s"]
            assert thicker["chill"]["sooner_s"] > thinner["chill"]["sooner_s"]


def test_minutes_in_a_room_as_said_to_shops():
    """12.7 mm on marble and steel; at 20 and 22 °C common practice, one to two hours."""
    minutes = {
        base: [round(cooled(base=base, room_c=room_c)["ready_s"] / 60.0) for room_c in (20.0, 22.0, 23.0, 26.0, 30.0)]
        for base in ("marble", "steel_sheet")
    }
    assert minutes == {"marble": [94, 122, 142, 278, 282], "steel_sheet": [97, 114, 126, 211, 214]}


def in_the_fridge_min(thickness_m, from_c=31.0, to_c=24.0, air_c=5.0):
    """Minutes by explicit finite volumes of our own: caramel on parchment on a cold sheet of steel, in still air."""
    k, capacity, rows = 0.296, 1419.0 * 1896.0, 24
    height, sheet = thickness_m / rows, 0.0015 * 7900.0 * 460.0
    caramel, steel_c, at_s = np.full(rows, from_c), air_c, 0.0
    step = 0.3 * height * height * capacity / k
    plate_m = convection.plate_length_m(0.35, 0.35)
    while True:
        hottest = caramel.max()
        flow = k / height * np.diff(caramel)
        above = convection.coefficient(("still_air", 0.95, plate_m, True), caramel[0], air_c)
        below = convection.coefficient(("still_air", 0.16, plate_m, False), steel_c + 1e-9, air_c)
        joint = (caramel[-1] - steel_c) / (0.5 * height / k + 0.005)
        caramel[:-1] += step / (capacity * height) * flow
        caramel[1:] -= step / (capacity * height) * flow
        caramel[0] -= step / (capacity * height) * (caramel[0] - air_c) / (1.0 / above + 0.5 * height / k)
        caramel[-1] -= step / (capacity * height) * joint
        steel_c += step / sheet * (joint - below * (steel_c - air_c))
        at_s += step
        if caramel.max() <= to_c:
            return (at_s - step * (to_c - caramel.max()) / (hottest - caramel.max())) / 60.0


@pytest.mark.parametrize(("thickness_m", "minutes"), [(0.0127, 9.8), (0.018, 17.9), (0.025, 29.6)])
def test_chill_is_as_long_as_the_slab_is_thick(thickness_m, minutes):
    """It was ten to fifteen minutes for every slab. Minutes of another calculation, and of one of our own."""
    chill_min = cooled(thickness_m=thickness_m, room_c=30.0, target_c=24.0)["chill"]["seconds_s"] / 60.0
    assert chill_min == pytest.approx(minutes, rel=0.02)
    assert chill_min == pytest.approx(in_the_fridge_min(thickness_m), rel=0.02)


def test_colder_refrigerator_takes_less_and_a_warm_one_is_refused():
    times = [cooled(room_c=30.0, fridge_c=fridge_c)["chill"]["seconds_s"] for fridge_c in (1.0, 5.0, 10.0, 15.0)]
    assert times == sorted(times)
    with pytest.raises(Problem) as caught:
        cooled(room_c=30.0, target_c=15.5, fridge_c=15.0)
    assert (caught.value.field, caught.value.code, caught.value.low) == ("target_c", "fridge_too_warm", 16.0)


def test_stone_from_the_refrigerator_may_bring_what_the_room_does_not():
    assert cooled(room_c=28.0, base="granite", thickness_m=0.006, base_start_c=5.0)["chill"] is None
    assert cooled(room_c=28.0, base="granite", thickness_m=0.03, base_start_c=25.0)["chill"] is not None


def test_not_yet_in_a_warm_room_says_nothing_of_the_bench():
    """A room of 30 °C never makes it ready, whatever the bench gives off; it is looked at again ten minutes later."""
    touched = {"touches": [{"at_s": 18000.0, "firm": False}]}
    reply = catalogue.call("cool.refit", {"thickness_m": 0.0127, "room_c": 30.0} | touched)
    assert reply["loss_factor"] == 1.0
    assert reply["ready_s"] == 18600.0


def test_what_a_shop_calls_ready_is_not_moved_by_its_caramel():
    asked = SLAB_REQUEST | {"firmness": "slumps"}
    assert catalogue.call("slab.plan", asked)["cool"]["target_c"] == 25.0
    assert catalogue.call("slab.plan", asked | {"target_c": 26.0})["cool"]["target_c"] == 26.0


# Second deposits and trays -----------------------------------------------------------------------------------------


def windows(room_c, **changes):
    try:
        reply = catalogue.call("cluster.plan", ON_NUTS | {"room_c": room_c} | changes)
    except Problem as problem:
        return problem
    return reply


@pytest.mark.parametrize("sizes", [{}, {"rows": [{"clusters": 48, "deposit_kg": 0.016}], "spread_m": 0.045}])
def test_second_deposit_may_go_on_longer_in_a_warmer_room(sizes):
    """What is too cold to weld rose with the room: 18.2 minutes at 26 °C, 17.6 at 28, refused from 29."""
    seconds = [windows(room_c, **sizes)["second"] for room_c in ROOMS]
    for cooler, warmer in itertools.pairwise(seconds):
        assert warmer["from_s"] > cooler["from_s"]
        assert warmer["to_s"] > cooler["to_s"]
    for cooler, warmer in itertools.pairwise(seconds[: ROOMS.index(30.0) + 1]):
        assert warmer["to_s"] - warmer["from_s"] > cooler["to_s"] - cooler["from_s"]


def test_refusal_of_a_second_deposit_goes_away_in_a_warmer_room():
    uneven = {"rows": [{"clusters": 20, "deposit_kg": 0.03}, {"clusters": 60, "deposit_kg": 0.005}]}
    uneven |= {"spread_m": 0.06, "second_kg": 0.002}
    found = [windows(room_c, **uneven) for room_c in (12.0, 18.0, 22.0, 26.0, 29.0, 31.0, 35.0)]
    refused = [isinstance(one, Problem) for one in found]
    assert {one.code for one in found if isinstance(one, Problem)} == {"no_time_to_weld"}
    assert refused == sorted(refused, reverse=True)
    assert refused[0]
    assert not refused[-1]


def test_tray_that_its_room_leaves_too_warm_is_chilled_and_the_plan_says_so():
    assert windows(23.0)["chill"] is None
    replies = [windows(room_c) for room_c in (24.0, 26.0, 30.0)]
    times = [one["chill"]["seconds_s"] for one in replies]
    assert times == sorted(times)
    warning = replies[1]["warnings"][0]
    assert warning["code"] == "chill_trays"
    assert warning["values"]["bench_s"] == replies[1]["free"]["from_s"]
    assert warning["values"]["chill_s"] == as_told_s(times[1])
