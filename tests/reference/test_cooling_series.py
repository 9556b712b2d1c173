"""The cooling of one layer against the exact series, and the series against printed figures.

Printed eigenvalues: Incropera & DeWitt, table 5.1. Worked examples: Geankoplis 5.3-2 and 5.5-1, Incropera 5.4 (read
in public notebooks of book examples), with the accuracy of the source: charts 0.3 K and 4 %, tables 0.2 K.
"""

import math

import pytest

from amberbench.engine.core import check
from amberbench.engine.steps.cool import cooling_curve as cooling
from amberbench.engine.steps.cool import plan as cool
from amberbench.engine.steps.cool.fields import COOL
from tests import slabs

# Caramel as at 51 °C (choi_okos_1986 composition of USDA 19074), as constants.
CARAMEL = {"conductivity_w_mk": 0.29559, "density_kg_m3": 1418.963, "heat_capacity_j_kgk": 1895.620}
DIFFUSIVITY = CARAMEL["conductivity_w_mk"] / CARAMEL["density_kg_m3"] / CARAMEL["heat_capacity_j_kgk"]
HALF_INCH_M = 0.0127


def request(**changes):
    """Our reference slab, checked: 12.7 mm, 72 to 30 °C in air at 21 °C, 10 W/(m² K) on top, insulated below."""
    full = {
        "thickness_m": HALF_INCH_M,
        "start_c": 72.0,
        "room_c": 21.0,
        "target_c": 30.0,
        "material": CARAMEL,
        "top": {"h_w_m2k": 10.0},
        "bottom": "insulated",
        "base": None,
    }
    return check.checked(COOL, full | changes)


def biot_request(bi, two_sided, target_c):
    """A slab of constant properties at a Biot number over half or all of its thickness."""
    h = {"h_w_m2k": bi * CARAMEL["conductivity_w_mk"] / HALF_INCH_M}
    return request(
        thickness_m=HALF_INCH_M * (1 + two_sided), target_c=target_c, top=h, bottom=h if two_sided else "insulated"
    )


BIOTS = (0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)


@pytest.mark.parametrize(
    ("bi", "zeta", "c"), [(0.1, 0.3111, 1.0161), (1.0, 0.8603, 1.1191), (10.0, 1.4289, 1.2620), (5.0, 1.3138, 1.2402)]
)
def test_series_has_the_printed_eigenvalues(bi, zeta, c):
    zetas, cs = slabs.roots(bi)
    assert zetas[0] == pytest.approx(zeta, abs=6e-5)
    assert cs[0] == pytest.approx(c, abs=6e-5)


@pytest.mark.parametrize(
    ("bi", "zetas", "cs"),
    [
        (0.05, (0.22176039, 3.15742701), (1.00818885, -0.00997945)),
        (0.5, (0.65327119, 3.29231002), (1.07012814, -0.08727584)),
        (5.0, (1.31383772, 4.03356779), (1.24024931, -0.34421496)),
    ],
)
def test_series_has_the_eigenvalues_of_another_computation(bi, zetas, cs):
    roots, coefficients = slabs.roots(bi)
    assert roots[:2] == pytest.approx(zetas, abs=1e-8)
    assert coefficients[:2] == pytest.approx(cs, abs=1e-8)


@pytest.mark.parametrize("two_sided", [False, True])
@pytest.mark.parametrize("target_c", [24.0, 30.0, 50.0])
@pytest.mark.parametrize("bi", BIOTS)
def test_ready_time_is_within_three_tenths_of_a_per_cent_of_the_series(bi, two_sided, target_c):
    exact_s = slabs.series_fourier(bi, (target_c - 21.0) / 51.0) * HALF_INCH_M**2 / DIFFUSIVITY
    assert cool.plan(biot_request(bi, two_sided, target_c))["ready_s"] == pytest.approx(exact_s, rel=0.003)


@pytest.mark.parametrize("two_sided", [False, True])
@pytest.mark.parametrize("bi", BIOTS)
def test_temperatures_are_within_a_tenth_of_a_kelvin_of_the_series(bi, two_sided):
    points = 0
    for at_s, core_c, surface_c in cooling.Slab(biot_request(bi, two_sided, 24.0)).run(1.0):
        fourier = at_s * DIFFUSIVITY / HALF_INCH_M**2
        if fourier >= 0.05:
            points += 1
            assert core_c == pytest.approx(21.0 + 51.0 * slabs.series(bi, fourier, 0.0), abs=0.1)
            assert surface_c == pytest.approx(21.0 + 51.0 * slabs.series(bi, fourier, 1.0), abs=0.1)
    assert points > 10


def ready_error_s(bi, two_sided, cells, finer):
    """Error in s of the time to 24 °C, against the series."""
    exact_s = slabs.series_fourier(bi, 3.0 / 51.0) * HALF_INCH_M**2 / DIFFUSIVITY
    slab = cooling.Slab(biot_request(bi, two_sided, 24.0), cells=cells, finer=finer)
    return abs(cooling.times(slab, slab.run(1.0))["ready"] - exact_s)


def test_halving_the_cells_quarters_the_error():
    errors = [ready_error_s(2.0, True, cells, 8.0) for cells in (10, 18, 34)]  # inner cells: an eighth to a 32nd
    assert errors[0] / errors[1] == pytest.approx(4.0, rel=0.1)
    assert errors[1] / errors[2] == pytest.approx(4.0, rel=0.1)


def test_halving_the_steps_quarters_the_error():
    errors = [ready_error_s(0.2, False, 66, finer) for finer in (1.0, 2.0, 4.0)]
    assert errors[0] / errors[1] == pytest.approx(4.0, rel=0.1)
    assert errors[1] / errors[2] == pytest.approx(4.0, rel=0.1)


def test_half_inch_slab_reaches_30_c_in_7031_s():
    assert cool.plan(request())["ready_s"] == pytest.approx(7030.75, rel=0.002)


@pytest.mark.parametrize(
    ("minute", "bottom_c", "top_c"),
    [(10, 67.4100, 59.0739), (30, 55.2022, 48.9935), (60, 42.6038, 38.6820), (90, 34.6460, 32.1688)],
)
def test_half_inch_slab_follows_its_course(minute, bottom_c, top_c):
    points = cooling.Slab(request(target_c=24.0)).run(1.0)
    assert slabs.at_point(points, minute * 60.0) == pytest.approx((bottom_c, top_c), abs=0.1)


@pytest.mark.parametrize(
    ("thickness_mm", "h", "two_sided", "minutes"),
    [
        (6.35, 5, False, 103.3),
        (6.35, 25, True, 11.0),
        (9.525, 12, False, 72.1),
        (12.7, 10, True, 54.0),
        (12.7, 25, False, 58.1),
        (19.05, 8, True, 102.9),
    ],
)
def test_minutes_to_30_c_by_thickness_and_coefficient(thickness_mm, h, two_sided, minutes):
    face = {"h_w_m2k": h}
    slab = request(thickness_m=thickness_mm / 1000.0, top=face, bottom=face if two_sided else "insulated")
    assert cool.plan(slab)["ready_s"] / 60.0 == pytest.approx(minutes, abs=0.05 + 0.003 * minutes)


def test_properties_by_temperature_agree_with_a_fine_grid_of_somebody_else():
    # Computed once on an implicit grid of 200 cells, parallel conductivity: 7035.5 s.
    assert cool.plan(request(material="caramel"))["ready_s"] == pytest.approx(7035.5, rel=0.003)


def test_butter_warming_as_geankoplis_5_3_2():
    # 46.2 mm in a box that insulates bottom and sides, 277.6 K into air at 297.1 K, 5 h. Warming is cooling upside
    # down: the same slab, 19.5 K above the air. Charts: top 292.2 K, 25.4 mm below it 288.3 K, bottom 287.4 K.
    butter = {"conductivity_w_mk": 0.197, "density_kg_m3": 998.0, "heat_capacity_j_kgk": 2300.0}
    slab = cooling.Slab(
        request(
            thickness_m=0.0462, start_c=40.5, target_c=22.0, material=butter, top={"h_w_m2k": 8.52}, bottom="insulated"
        )
    )
    bottom_c, top_c = slabs.at_point(slab.run(1.0), 5 * 3600.0)
    assert 297.1 - (top_c - 21.0) == pytest.approx(292.2, abs=0.3)
    assert 297.1 - (bottom_c - 21.0) == pytest.approx(287.4, abs=0.3)
    assert 297.1 - (top_c - 21.0) == pytest.approx(292.389, abs=0.05)  # the exact series
    assert 297.1 - (bottom_c - 21.0) == pytest.approx(287.169, abs=0.05)


def test_beef_chilling_as_geankoplis_5_5_1():
    # 203 mm, both faces, 37.8 to 10 °C at the centre in air at 1.7 °C: chart 69 500 s (reading the chart is good to
    # 4 %), exact series 67 005 s. A slab this thick is beyond what cool.plan accepts, so its scaled twin: a tenth of
    # the thickness, ten times the coefficient, a hundredth of the time.
    beef = {"conductivity_w_mk": 0.498, "density_kg_m3": 1073.0, "heat_capacity_j_kgk": 3480.0}
    face = {"h_w_m2k": 397.0}
    slab = request(thickness_m=0.0203, start_c=37.8, room_c=1.7, target_c=10.0, material=beef, top=face, bottom=face)
    ready_s = 100.0 * cool.plan(slab)["ready_s"]
    assert ready_s == pytest.approx(69500.0, rel=0.04)
    assert ready_s == pytest.approx(67005.0, rel=0.01)


def test_warm_plate_as_incropera_5_4():
    # 40 mm of steel from −20 °C against oil at 60 °C, 500 W/(m² K), back insulated, 8 min: 42.9 °C and 45.2 °C by the
    # one-term table. Upside down again, and scaled: our slabs start above the air.
    steel = {"conductivity_w_mk": 63.9, "density_kg_m3": 7832.0, "heat_capacity_j_kgk": 434.0}
    slab = cooling.Slab(
        request(
            thickness_m=0.040, start_c=101.0, target_c=30.0, material=steel, top={"h_w_m2k": 500.0}, bottom="insulated"
        )
    )
    back_c, face_c = slabs.at_point(slab.run(1.0), 480.0)
    assert 60.0 - (back_c - 21.0) == pytest.approx(42.9, abs=0.2)
    assert 60.0 - (face_c - 21.0) == pytest.approx(45.2, abs=0.2)


def test_insulated_slab_with_a_thin_film_cools_as_a_lump():
    # Biot 0.004: θ = exp(−h t/(ρ cp L)) and the core lags by Biot/2 of the excess: 0.9 %.
    lumped_s = 1418.963 * 1895.620 * HALF_INCH_M / 0.1 * math.log(50.0 / 39.0)
    slab = request(top={"h_w_m2k": 0.1}, start_c=71.0, target_c=60.0)
    assert cool.plan(slab)["ready_s"] == pytest.approx(lumped_s, rel=0.009)
