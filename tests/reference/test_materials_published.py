"""Materials against the outside world: published component values, a published mixture, measured chocolate.

Tolerances are those of the printed figures unless said otherwise.
"""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.physics import materials

CARAMEL = {"water": 0.085, "protein": 0.046, "fat": 0.081, "carbohydrate": 0.77, "fibre": 0.0, "ash": 0.018}

# Component: (conductivity, density, specific heat) at 21 and at 74 °C; W/(m K), kg/m³, kJ/(kg K). Polynomials of Choi &
# Okos (1986) as tabulated by ASHRAE, evaluated independently of this engine; water specific heat with 4.1762.
COMPONENTS = {
    "water": ((0.60515, 995.58901, 4.17671), (0.66481, 976.83713, 4.19945)),
    "protein": ((0.20272, 1319.0136, 2.03301), (0.25242, 1291.5384, 2.09047)),
    "fat": ((0.17483, 916.82103, 2.01302), (0.15931, 894.68982, 2.06694)),
    "carbohydrate": ((0.22864, 1592.58034, 1.58739), (0.28036, 1576.12596, 1.66150)),
    "fibre": ((0.20816, 1303.81631, 1.88229), (0.25844, 1284.42414, 1.95590)),
    "ash": ((0.35776, 2417.90677, 1.13066), (0.41738, 2403.03338, 1.21227)),
}
# USDA caramel (19074): °C, specific heat kJ/(kg K), density kg/m³, conductivity W/(m K) (parallel), diffusivity m²/s.
COURSE = [
    (20, 1.85271, 1429.849, 0.26683, 1.00725e-7),
    (21, 1.85424, 1429.518, 0.26788, 1.01060e-7),
    (30, 1.86753, 1426.478, 0.27692, 1.03950e-7),
    (40, 1.88141, 1422.973, 0.28624, 1.06917e-7),
    (51, 1.89562, 1418.963, 0.29559, 1.09892e-7),
    (60, 1.90641, 1415.560, 0.30254, 1.12110e-7),
    (72, 1.91964, 1410.851, 0.31085, 1.14774e-7),
    (74, 1.92171, 1410.047, 0.31212, 1.15186e-7),
]
# USDA National Nutrient Database, release 28 (2016), g in 100 g: food number, water, protein, fat, carbohydrate by
# difference (which takes in the fibre), fibre, ash.
USDA = {
    "caramel": (19074, 8.50, 4.60, 8.10, 77.00, 0.0, 1.80),
    "almond": (12063, 2.41, 20.96, 52.54, 21.01, 10.9, 3.07),
    "cashew": (12085, 1.70, 15.31, 46.35, 32.69, 3.0, 3.95),
    "hazelnut": (12120, 5.31, 14.95, 60.75, 16.70, 9.7, 2.29),
    "macadamia": (12131, 1.36, 7.91, 75.77, 13.82, 8.6, 1.14),
    "peanut": (16390, 1.81, 24.35, 49.66, 21.26, 8.4, 2.92),
    "pecan": (12143, 1.12, 9.50, 74.27, 13.55, 9.4, 1.56),
    "pistachio": (12151, 4.37, 20.16, 45.32, 27.17, 10.6, 2.99),
    "walnut": (12155, 4.07, 15.23, 65.21, 13.71, 6.7, 1.78),
    "pretzel": (19047, 3.13, 10.04, 2.93, 80.39, 3.4, 3.51),
}
# Water in caramel, solids scaled: kJ/kg from 21 to 74 °C.
BY_WATER = [(0.06, 96.853), (0.07, 98.183), (0.08, 99.513), (0.09, 100.842), (0.10, 102.172), (0.12, 104.831)]


def properties(material, temp_c):
    return catalogue.call("materials.properties", {"material": material, "temp_c": temp_c})


def kilojoule(material, from_c=21, to_c=74):
    request = {"material": material, "mass_kg": 1, "from_c": from_c, "to_c": to_c}
    return catalogue.call("materials.heat", request)["energy_j"] / 1000.0


@pytest.mark.parametrize("name", COMPONENTS)
@pytest.mark.parametrize(("index", "temp_c"), [(0, 21), (1, 74)])
def test_a_pure_component_has_its_published_properties(name, index, temp_c):
    k, rho, cp = COMPONENTS[name][index]
    found = properties({"water": 0, name: 1}, temp_c)
    assert found["conductivity_w_mk"] == pytest.approx(k, abs=6e-6)
    assert found["density_kg_m3"] == pytest.approx(rho, abs=6e-5)
    assert found["heat_capacity_j_kgk"] == pytest.approx(1000 * cp, abs=6e-3)


@pytest.mark.parametrize(("temp_c", "cp", "rho", "k", "alpha"), COURSE)
def test_caramel_has_its_properties_from_room_to_pouring(temp_c, cp, rho, k, alpha):
    found = properties("caramel", temp_c)
    assert found["heat_capacity_j_kgk"] == pytest.approx(1000 * cp, abs=6e-3)
    assert found["density_kg_m3"] == pytest.approx(rho, abs=6e-4)
    assert found["conductivity_w_mk"] == pytest.approx(k, abs=6e-6)
    assert found["diffusivity_m2_s"] == pytest.approx(alpha, abs=6e-13)


def test_a_kilogram_of_caramel_from_21_to_74_takes_100_kilojoule():
    assert kilojoule("caramel") == pytest.approx(100.17736, abs=6e-6)


@pytest.mark.parametrize(("water", "energy"), BY_WATER)
def test_wetter_caramel_takes_more_heat(water, energy):
    scale = (1 - water) / 0.915
    wetter = {name: share * scale for name, share in CARAMEL.items()} | {"water": water}
    assert kilojoule(wetter) == pytest.approx(energy, abs=6e-4)


def test_the_lamb_of_the_published_example_has_its_printed_specific_heat():
    # ASHRAE Handbook—Refrigeration 1998, chapter 8, example 2 (quoted second-hand): 41 °F, 0.858 Btu/(lb °F); one
    # Btu/(lb °F) is 4186.8 J/(kg K). The printed water value, 0.9974, needs the constant 4.1762.
    lamb = {"water": 0.7342, "protein": 0.2029, "fat": 0.0525, "ash": 0.0106}
    # The printed fractions sum to 1.0002, which the example does not take out and the engine does.
    found = properties(lamb, 5.0)["heat_capacity_j_kgk"] * sum(lamb.values())
    assert found / 4186.8 == pytest.approx(0.858, abs=0.0005)
    for name, printed in (("water", 0.9974), ("protein", 0.4811), ("fat", 0.4756), ("ash", 0.2632)):
        pure = properties({"water": 0, name: 1}, 5.0)["heat_capacity_j_kgk"]
        assert pure / 4186.8 == pytest.approx(printed, abs=6e-5)


def test_carrots_agree_with_the_published_table():
    # ASHRAE, specific heat above freezing of carrots, 87.79 % water: 3.92 kJ/(kg K). Component models spread; Choi and
    # Okos give 3.862 at 20 °C. USDA carrots: solids nearly all carbohydrate.
    carrot = {"water": 0.8779, "protein": 0.0103, "fat": 0.0019, "carbohydrate": 0.1012, "ash": 0.0087}
    assert properties(carrot, 20.0)["heat_capacity_j_kgk"] == pytest.approx(3920, rel=0.02)


def test_conductivity_agrees_with_the_rule_of_thumb_for_water_content():
    # Earle, Unit Operations in Food Processing, web edition, appendix 7: 0.55 p + 0.26 (1 − p) W/(m K), p water.
    assert properties("caramel", 40.0)["conductivity_w_mk"] == pytest.approx(0.55 * 0.085 + 0.26 * 0.915, rel=0.05)


def test_chocolate_has_its_measured_properties():
    # Beckett (2009), pp. 667–668: 1.59 kJ/(kg K) between 15 and 40 °C. Solid bars float between 1230 and 1333 kg/m³.
    for kind in ("dark_chocolate", "milk_chocolate", "white_chocolate"):
        found = properties(kind, 25.0)
        assert found["heat_capacity_j_kgk"] == 1590.0
        assert 1230 <= found["density_kg_m3"] <= 1333


def test_built_in_compositions_are_those_of_the_published_table():
    assert sorted(materials.FOODS) == sorted(USDA)
    for name, (_, water, protein, fat, carbohydrate, fibre, ash) in USDA.items():
        table = (water, protein, fat, carbohydrate - fibre, fibre, ash)
        assert materials.FOODS[name] == pytest.approx([share / 100 for share in table], abs=1e-9), name


def test_supercooled_water_has_the_specific_heat_of_its_own_polynomial():
    # Choi & Okos (1986), −40 to 0 °C: 4.0817 − 5.3062e-3 t + 9.9516e-4 t² kJ/(kg K), by hand at −20 °C.
    found = properties({"water": 1}, -20.0)["heat_capacity_j_kgk"]
    assert found == pytest.approx(4081.7 + 106.124 + 398.064, abs=0.001)
