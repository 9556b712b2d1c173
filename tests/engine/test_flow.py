"""Viscosity and the cube that stands."""

import itertools
import math

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests.bench import SLAB_REQUEST
from tests.strategies_deposit import ON_NUTS

HOUR_S = 3600.0


def viscosity(**request):
    return catalogue.call("flow.viscosity", {"temp_c": 40, "moisture": 0.085} | request)


def stood(*heights_mm, hours=(0, 1, 24, 72)):
    heights = [{"at_s": at * HOUR_S, "height_m": mm / 1000} for at, mm in zip(hours, heights_mm, strict=False)]
    return catalogue.call("flow.stand_up_test", {"heights": heights, "room_c": 21})


def test_warmer_or_wetter_caramel_is_thinner():
    for field, values in (("temp_c", (21, 40, 74, 82)), ("moisture", (0.06, 0.085, 0.12))):
        found = [viscosity(**{field: value})["viscosity_pa_s"] for value in values]
        assert found == sorted(found, reverse=True)


def decades(found):
    """How far the range goes down and up from the value, in decimal logarithms."""
    middle = math.log10(found["viscosity_pa_s"])
    return middle - math.log10(found["low_pa_s"]), math.log10(found["high_pa_s"]) - middle


def test_range_grows_towards_the_glass_where_the_glass_is_reckoned():
    glass = viscosity()["glass_c"]
    found = [decades(viscosity(temp_c=temp_c)) for temp_c in (100, 74, 40, 21, glass + 8)]
    for down, up in itertools.pairwise(found):
        assert 1 < down[0] < up[0]
        assert 1 < down[1] < up[1]


def test_no_caramel_is_much_thicker_than_a_glass():
    at_the_glass = viscosity(temp_c=viscosity()["glass_c"])
    assert decades(at_the_glass)[1] == pytest.approx(1)


def test_a_known_glass_leaves_ten_times_and_all_but_the_relations_are_assumed():
    assert decades(viscosity(glass_c=-1.8)) == pytest.approx((1, 1))
    basis = {row["field"]: (row["basis"], row["measure_by"]) for row in viscosity()["inputs"]}
    assert basis["dry_glass_c"] == basis["flow.spread_log"] == basis["flow.dry_glass_k"] == ("assumed", "stand_up_test")


@pytest.mark.parametrize(
    ("request_", "field", "code"),
    [
        ({"temp_c": -10}, "temp_c", "below_glass"),
        ({"temp_c": 20, "glass_c": 30}, "temp_c", "below_glass"),
        ({"moisture": -0.1}, "moisture", "too_low"),
        ({"moisture": 8.5}, "moisture", "too_high"),
    ],
)
def test_what_does_not_flow_is_refused(request_, field, code):
    with pytest.raises(Problem) as caught:
        viscosity(**request_)
    assert (caught.value.field, caught.value.code) == (field, code)


@pytest.mark.parametrize(
    ("heights_mm", "lost", "verdict"),
    [
        ((12.0, 12.0, 11.9, 11.8), 0.2 / 12, "firm"),
        ((12.0, 11.9, 11.4), 0.05, "firm"),
        ((12.0, 11.8, 11.3, 10.8), 0.1, "borderline"),
        ((12.0, 11.0, 9.0, 6.0), 0.5, "slumps"),
        ((12.0, 12.0), 0.0, "borderline"),
        ((12.0, 9.0), 0.25, "slumps"),
    ],
)
def test_cube_is_judged_by_the_height_it_lost(heights_mm, lost, verdict):
    """Lines of 5 and 15 % are assumed; after an hour nobody can say firm."""
    found = stood(*heights_mm)
    assert found["lost_fraction"] == pytest.approx(lost)
    assert found["verdict"] == verdict


@pytest.mark.parametrize("first_mm", [9.5, 10.0, 12.0, 12.5, 12.7, 20.0])
def test_cube_on_a_line_gets_the_better_verdict(first_mm):
    for share, verdict in ((0.95, "firm"), (0.949, "borderline"), (0.85, "borderline"), (0.849, "slumps")):
        assert stood(first_mm, share * first_mm, hours=(0, 24))["verdict"] == verdict


@pytest.mark.parametrize(
    ("heights_mm", "hours", "field", "code"),
    [
        ((12.0, 12.1), (0, 1), "heights[1].height_m", "height_grows"),
        ((12.0, 11.0, 11.5), (0, 1, 24), "heights[2].height_m", "height_grows"),
        ((12.0, 11.0), (1, 1), "heights[1].at_s", "not_later"),
        ((12.0, 11.0), (2, 1), "heights[1].at_s", "not_later"),
        ((12.0,), (0,), "heights", "too_few"),
    ],
)
def test_heights_that_make_no_sense_are_refused(heights_mm, hours, field, code):
    with pytest.raises(Problem) as caught:
        stood(*heights_mm, hours=hours)
    assert (caught.value.field, caught.value.code) == (field, code)


def test_caramel_that_slumps_is_cut_colder_and_later():
    """2 K colder where it slumps, 1 K where it sinks a little (assumed)."""
    ready_s, targets_c = [], []
    for firmness in ("firm", "borderline", "slumps"):
        reply = catalogue.call("slab.plan", SLAB_REQUEST | {"firmness": firmness})
        ready_s.append(reply["cool"]["ready_s"])
        targets_c.append(reply["cool"]["target_c"])
        said = [one["code"] for one in reply["warnings"]]
        assert said == ([] if firmness == "firm" else [firmness + "_caramel"])
    assert targets_c == [27.0, 26.0, 25.0]
    assert ready_s == sorted(ready_s)
    assert ready_s[0] < ready_s[2]


def test_stand_up_test_decides_over_a_squeeze():
    said = {}
    for firmness in (None, "firm"):
        reply = catalogue.call("slab.plan", SLAB_REQUEST | {"firmness": firmness, "squeeze": "soft"})
        said[firmness] = [one["code"] for one in reply["warnings"]]
    assert said == {None: ["borderline_caramel"], "firm": []}


def test_brittle_delivery_is_told():
    reply = catalogue.call("slab.plan", SLAB_REQUEST | {"squeeze": "brittle"})
    assert [one["code"] for one in reply["warnings"]] == ["brittle_caramel"]


def test_second_deposit_on_a_caramel_that_slumps_waits_longer():
    firm = catalogue.call("cluster.plan", ON_NUTS)
    soft = catalogue.call("cluster.plan", ON_NUTS | {"firmness": "slumps"})
    assert soft["second"]["from_s"] > firm["second"]["from_s"]
    assert soft["warnings"][0]["code"] == "slumps_caramel"
