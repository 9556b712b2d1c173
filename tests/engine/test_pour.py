"""The bars are solid: what adjusts is the area they enclose."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem

HALF_BLOCK_KG = 2.5 * 0.45359237
HALF_INCH_M = 0.5 * 0.0254


def poured(**request):
    return catalogue.call("pour.plan", request)


def codes(reply):
    return [warning["code"] for warning in reply["warnings"]]


def problem(**request):
    with pytest.raises(Problem) as caught:
        poured(**request)
    return caught.value


def test_half_a_block_at_half_an_inch_gives_95_to_100_square_inches():
    # Common practice, no published source: half of a five-pound block spread to half an inch.
    reply = poured(solve_for="length", mass_kg=HALF_BLOCK_KG, width_m=0.25, slab_height_m=HALF_INCH_M)
    assert 95.0 <= reply["area_m2"] / 0.0254**2 <= 100.0


def test_mass_is_density_times_area_times_height_with_the_residue_on_top():
    # 1410.047 kg/m³ at 74 °C: component polynomials (choi_okos_1986), USDA caramel.
    reply = poured(solve_for="mass", length_m=0.3, width_m=0.2, slab_height_m=0.01, residue=0.02)
    assert reply["mass_kg"] == pytest.approx(1410.047 * 0.3 * 0.2 * 0.01 / 0.98, rel=1e-6)
    assert reply["volume_m3"] == pytest.approx(0.0006)


def test_slab_settles_by_one_point_four_per_cent_from_74_to_21():
    # Densities 1410.047 and 1429.518 kg/m³ (choi_okos_1986, USDA caramel): 12.7 mm settle to 12.527 mm, 1.38 % of it.
    reply = poured(solve_for="mass", length_m=0.3, width_m=0.2, slab_height_m=HALF_INCH_M)
    assert reply["slab_height_m"] / reply["settled_height_m"] - 1.0 == pytest.approx(0.01381, abs=1e-5)


@given(
    length_m=st.floats(0.1, 0.6), width_m=st.floats(0.1, 0.4), slab_height_m=st.floats(0.005, 0.03),
    residue=st.floats(0.0, 0.1), pour_c=st.floats(60, 90),
)  # fmt: skip
def test_the_three_ways_round_agree(length_m, width_m, slab_height_m, residue, pour_c):
    same = {"width_m": width_m, "residue": residue, "pour_c": pour_c}
    mass_kg = poured(solve_for="mass", length_m=length_m, slab_height_m=slab_height_m, **same)["mass_kg"]
    assert poured(solve_for="length", mass_kg=mass_kg, slab_height_m=slab_height_m, **same)[
        "length_m"
    ] == pytest.approx(length_m)
    assert poured(solve_for="height", mass_kg=mass_kg, length_m=length_m, **same)["slab_height_m"] == pytest.approx(
        slab_height_m
    )


def test_more_residue_wants_more_caramel():
    frame = {"solve_for": "mass", "length_m": 0.3, "width_m": 0.2, "slab_height_m": 0.01}
    assert poured(residue=0.05, **frame)["mass_kg"] > poured(residue=0.01, **frame)["mass_kg"]


FRAME = {"solve_for": "mass", "length_m": 0.3, "width_m": 0.2}


def test_bars_stack_to_the_height_wanted():
    reply = poured(slab_height_m=0.016, bars_m=[0.006, 0.010, 0.012], **FRAME)
    assert reply["bars"] == [0.010, 0.006]
    assert reply["bar_height_m"] == pytest.approx(0.016)
    assert reply["warnings"] == []


def test_a_single_bar_goes_before_a_stack_of_the_same_height():
    assert poured(slab_height_m=0.012, bars_m=[0.006, 0.006, 0.012], **FRAME)["bars"] == [0.012]


def test_a_bar_is_stacked_only_as_often_as_it_is_listed():
    once = poured(slab_height_m=0.012, bars_m=[0.006], **FRAME)
    assert once["bars"] == [0.006]
    assert codes(once) == ["bars_nearest"]
    assert poured(slab_height_m=0.012, bars_m=[0.006, 0.006], **FRAME)["bars"] == [0.006, 0.006]


def test_a_bar_within_half_a_millimetre_will_do_and_sets_the_height():
    reply = poured(slab_height_m=0.0127, bars_m=[0.0125], **FRAME)
    assert reply["warnings"] == []
    assert reply["slab_height_m"] == 0.0125


def test_no_bar_near_says_what_the_nearest_gives():
    reply = poured(slab_height_m=0.010, bars_m=[0.0127, 0.006], **FRAME)
    assert reply["warnings"] == [{"code": "bars_nearest", "values": {"wanted_m": 0.010, "nearest_m": 0.0127}}]
    assert reply["slab_height_m"] == 0.0127


def test_caramel_that_does_not_reach_the_bars_is_said():
    given_frame = {"solve_for": "height", "length_m": 0.4, "width_m": 0.3, "bars_m": [0.010]}
    assert codes(poured(mass_kg=1.0, **given_frame)) == ["slab_below_bars"]
    assert codes(poured(mass_kg=2.5, **given_frame)) == ["bars_too_low"]


def test_a_frame_larger_than_the_table_is_said_either_way_round():
    table = {"max_length_m": 0.6, "max_width_m": 0.4, "slab_height_m": 0.01, "solve_for": "mass"}
    assert codes(poured(length_m=0.4, width_m=0.6, **table)) == []
    assert codes(poured(length_m=0.5, width_m=0.45, **table)) == ["frame_outruns_table"]


def test_a_thin_wide_pour_stiffens_before_it_is_spread():
    thin = poured(solve_for="mass", length_m=1.0, width_m=0.6, slab_height_m=0.003)
    assert codes(thin) == ["stiffens_first"]
    values = thin["warnings"][0]["values"]
    assert values["spread_s"] > values["stiff_s"] > 0
    assert codes(poured(solve_for="mass", length_m=0.4, width_m=0.3, slab_height_m=0.01)) == []
    # By hand: 1410.047 kg/m³ × 3 mm × 14 K × 1914.06 J/(kg K), at 40 W/(m² K) and 67 °C in a room at 21 °C.
    assert values["stiff_s"] == pytest.approx(1410.047 * 0.003 * 14.0 * 1914.06 / (40.0 * 46.0), rel=1e-3)


def test_in_a_warm_room_it_stiffens_later():
    thin = {"solve_for": "mass", "length_m": 1.0, "width_m": 0.6, "slab_height_m": 0.003}
    cold, warm = (poured(room_c=room_c, **thin)["warnings"][0]["values"]["stiff_s"] for room_c in (16.0, 31.0))
    assert warm / cold == pytest.approx((67.0 - 16.0) / (67.0 - 31.0))


@pytest.mark.parametrize(
    ("solve_for", "lacking"),
    [("mass", "length_m"), ("mass", "width_m"), ("mass", "slab_height_m"), ("length", "mass_kg"),
     ("length", "width_m"), ("length", "slab_height_m"), ("height", "mass_kg"), ("height", "length_m")],
)  # fmt: skip
def test_what_is_needed_and_lacking_is_named(solve_for, lacking):
    request = {"mass_kg": 1.0, "length_m": 0.3, "width_m": 0.2, "slab_height_m": 0.01}
    del request[lacking]
    found = problem(solve_for=solve_for, **request)
    assert (found.field, found.code) == (lacking, "missing")
    assert found.low is not None
    assert found.high is not None


def test_caramel_that_no_frame_can_take_says_how_much_would_do():
    found = problem(solve_for="length", mass_kg=40.0, width_m=0.05, slab_height_m=0.004)
    assert (found.field, found.code, found.unit) == ("mass_kg", "too_much_caramel", "kg")
    assert poured(solve_for="length", mass_kg=0.999 * found.high, width_m=0.05, slab_height_m=0.004)["length_m"] < 5.0
    found = problem(solve_for="height", mass_kg=0.1, length_m=1.0, width_m=1.0)
    assert (found.field, found.code) == ("mass_kg", "too_little_caramel")
    assert poured(solve_for="height", mass_kg=1.001 * found.low, length_m=1.0, width_m=1.0)["slab_height_m"] >= 0.002


def test_a_frame_that_takes_too_much_or_hardly_any_caramel_says_its_limit():
    assert problem(solve_for="mass", length_m=5.0, width_m=5.0, slab_height_m=0.02).code == "frame_too_large"
    assert problem(solve_for="mass", length_m=0.02, width_m=0.02, slab_height_m=0.01).code == "frame_too_small"
