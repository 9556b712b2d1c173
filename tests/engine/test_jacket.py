"""Melting in a water-jacketed vessel."""

import itertools
from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.physics import plane_wall
from amberbench.engine.steps.jacket import plan as jacket

# A 10 lb (4.5 kg) can as a block of the same volume and height.
CAN = {"length_m": 0.14, "width_m": 0.14, "height_m": 0.165}


def asked(**changes: Any) -> dict[str, Any]:
    request: dict[str, Any] = {"block": CAN, "start_c": 21.0, "jacket_c": 88.0, "window_low_c": 77.0, "limit_c": 93.3}
    return request | {"material": "caramel", "chopped_m": None} | changes


@pytest.mark.parametrize(
    ("bi", "zeta", "share"),
    # Incropera & DeWitt, table 5.1, as printed to four digits (quoted second-hand).
    [(0.1, 0.3111, 1.0161), (1.0, 0.8603, 1.1191), (10.0, 1.4289, 1.2620)],
)
def test_first_root_and_coefficient_are_the_printed_ones(bi, zeta, share):
    found = plane_wall.roots(bi)
    assert found[0] == pytest.approx(zeta, abs=5e-5)
    middle, _ = plane_wall.middle_and_mean(found[:1], 0.0)
    assert middle == 1.0  # the first term alone is above one at Fo = 0, and is held there
    late, _ = plane_wall.middle_and_mean(found, 2.0)
    assert late == pytest.approx(share * 2.718281828 ** (-zeta * zeta * 2.0), rel=1e-3)


def test_ten_pound_can_takes_about_three_and_a_half_hours():
    """Common practice, no published source: 10 lb can in a double boiler, about 3½ h."""
    reply = jacket.plan(asked())
    assert reply["low_s"] < 3.5 * 3600 < reply["high_s"]
    # As its docstring says, and within the ± 40 % it names.
    told = [reply[name] / 3600 for name in ("low_s", "seconds_s", "high_s")]
    assert told == pytest.approx([2.7, 3.1, 3.9], abs=0.05)
    assert told[1] == pytest.approx(3.5, rel=0.4)


def test_chopped_melts_sooner_than_whole():
    times = [jacket.plan(asked(chopped_m=size_m))["seconds_s"] for size_m in (0.02, 0.05, None)]
    assert times == sorted(times)


@pytest.mark.parametrize("bound", ["low_s", "seconds_s", "high_s"])
def test_pieces_as_large_as_the_block_are_the_block(bound):
    times = [jacket.plan(asked(chopped_m=size_m))[bound] for size_m in (0.02, 0.08, 0.11, 0.14, 0.165, 0.5, None)]
    assert times == sorted(times)
    assert times[-2] == times[-1]


def test_window_below_where_it_stirs_freely_is_reached_by_conduction():
    """Water cooler than 48 °C never makes it stir freely, but warms it into a window that lies lower."""
    cool = jacket.plan(asked(window_low_c=40.0, jacket_c=44.0))
    assert cool["low_s"] < cool["seconds_s"] < cool["high_s"] < 48 * 3600
    assert cool["seconds_s"] > jacket.plan(asked(window_low_c=40.0, jacket_c=50.0))["seconds_s"]


def test_hotter_jacket_melts_sooner():
    times = [jacket.plan(asked(jacket_c=c))["seconds_s"] for c in (92.0, 88.0, 84.0)]
    assert times == sorted(times)


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"jacket_c": 95.0}, "jacket_c", "jacket_above_limit"),
        ({"jacket_c": 78.0}, "jacket_c", "jacket_too_cool"),
        ({"start_c": 80.0}, "start_c", "start_above_window"),
    ],
)
def test_jacket_that_scorches_or_never_gets_there_is_refused(changes, field, code):
    with pytest.raises(Problem) as caught:
        jacket.plan(asked(**changes))
    assert (caught.value.field, caught.value.code) == (field, code)


@pytest.mark.parametrize("chopped_m", [None, 0.03])
def test_block_that_goes_in_warm_is_never_ready_all_at_once_sooner(chopped_m):
    """Put in at 48 °C instead of 47 °C it was ready after 2222 instead of 3178 s."""
    block = {"length_m": 0.12, "width_m": 0.12, "height_m": 0.12}
    asked = {"block": block, "jacket_c": 88.0, "chopped_m": chopped_m}
    starts_c = [20.0 + 0.25 * i for i in range(181)]
    for name in ("low_s", "seconds_s", "high_s"):
        times = [catalogue.call("melt.plan_jacket", asked | {"start_c": start_c})[name] for start_c in starts_c]
        for cooler, warmer in itertools.pairwise(times):
            assert 0.93 * cooler < warmer < cooler
