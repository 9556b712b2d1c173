"""Thermal properties: limits, properties that must hold, and what is refused."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.physics import materials
from amberbench.engine.physics.fields import MATERIAL_NAMES

TEMPERATURES = st.floats(-40, 150)
NAMES = st.sampled_from(MATERIAL_NAMES)


def properties(material="caramel", temp_c=21.0):
    return catalogue.call("materials.properties", {"material": material, "temp_c": temp_c})


def heat(material="caramel", mass_kg=1.0, from_c=21.0, to_c=74.0):
    request = {"material": material, "mass_kg": mass_kg, "from_c": from_c, "to_c": to_c}
    return catalogue.call("materials.heat", request)["energy_j"]


def problem(name, **request):
    with pytest.raises(Problem) as caught:
        catalogue.call(name, request)
    return caught.value


@pytest.mark.parametrize("name", MATERIAL_NAMES)
def test_every_named_material_is_known_and_ordinary(name):
    found = properties(name)
    assert 850 < found["density_kg_m3"] < 1650
    assert 1400 < found["heat_capacity_j_kgk"] < 2400
    assert 0.1 < found["conductivity_w_mk"] < 0.35


@given(name=NAMES, temp_c=TEMPERATURES)
def test_diffusivity_is_conductivity_over_density_and_heat_capacity(name, temp_c):
    found = properties(name, temp_c)
    stored = found["density_kg_m3"] * found["heat_capacity_j_kgk"]
    assert found["diffusivity_m2_s"] == pytest.approx(found["conductivity_w_mk"] / stored)


@given(name=NAMES, a=TEMPERATURES, b=TEMPERATURES, c=TEMPERATURES, mass_kg=st.floats(0, 100))
def test_heat_adds_up_and_turns_with_the_way(name, a, b, c, mass_kg):
    direct = heat(name, mass_kg, a, c)
    assert direct == pytest.approx(heat(name, mass_kg, a, b) + heat(name, mass_kg, b, c), rel=1e-9, abs=1e-3)
    assert direct == pytest.approx(-heat(name, mass_kg, c, a))
    assert heat(name, mass_kg, a, a) == 0.0


@given(name=NAMES, temp_c=st.floats(-39.9, 149.9))
def test_heat_capacity_is_the_slope_of_the_heat(name, temp_c):
    if abs(temp_c) < 0.1:
        return  # the water polynomials meet at 0 °C with a step of 2 % (choi_okos_1986)
    slope = heat(name, 1.0, temp_c - 0.05, temp_c + 0.05) / 0.1
    assert slope == pytest.approx(properties(name, temp_c)["heat_capacity_j_kgk"], rel=1e-6)


@given(parts=st.lists(st.floats(0.01, 1), min_size=6, max_size=6), temp_c=TEMPERATURES)
def test_a_mixture_lies_between_its_parts(parts, temp_c):
    total = sum(parts)
    mixture = {name: part / total for name, part in zip(materials.COMPONENTS, parts, strict=True)}
    pure = [properties({"water": 0, name: 1}, temp_c) for name in materials.COMPONENTS]
    found = properties(mixture, temp_c)
    for key in ("density_kg_m3", "heat_capacity_j_kgk", "conductivity_w_mk"):
        values = [one[key] for one in pure]
        assert min(values) * (1 - 1e-12) <= found[key] <= max(values) * (1 + 1e-12)


@given(total=st.floats(0.98, 1.02))
def test_fractions_that_nearly_sum_to_one_are_normalised(total):
    exact = {"water": 0.085, "protein": 0.046, "fat": 0.081, "carbohydrate": 0.77, "ash": 0.018}
    scaled = {name: share * total for name, share in exact.items()}
    if 0.98 <= sum(scaled.values()) <= 1.02:
        assert properties(scaled)["density_kg_m3"] == pytest.approx(properties(exact)["density_kg_m3"], rel=1e-12)


def test_a_weighed_density_holds_at_room_temperature_and_expands_like_the_rest():
    label = {"water": 0.085, "protein": 0.046, "fat": 0.081, "carbohydrate": 0.77, "ash": 0.018}
    weighed = label | {"density_kg_m3": 1350.0}
    assert properties(weighed, 21.0)["density_kg_m3"] == pytest.approx(1350.0)
    ratio = properties(weighed, 74.0)["density_kg_m3"] / properties(label, 74.0)["density_kg_m3"]
    assert ratio == pytest.approx(1350.0 / properties(label, 21.0)["density_kg_m3"])


def test_constants_are_taken_as_they_are():
    found = properties({"conductivity_w_mk": 0.3, "density_kg_m3": 1400, "heat_capacity_j_kgk": 2000})
    assert found["diffusivity_m2_s"] == pytest.approx(0.3 / 2.8e6)


@pytest.mark.parametrize("share", [0.5, 0.97, 1.0])
def test_a_composition_that_does_not_sum_to_one_is_refused(share):
    found = problem("materials.properties", temp_c=21, material={"water": share, "fat": 0.03 if share == 1 else 0})
    assert (found.field, found.code, found.low, found.high) == ("material", "composition_sum", 0.98, 1.02)


@pytest.mark.parametrize(
    ("request_", "field", "code"),
    [
        ({"material": "toffee", "temp_c": 21}, "material", "not_an_option"),
        ({"material": {"water": -0.1, "fat": 0.1}, "temp_c": 21}, "material.water", "too_low"),
        ({"material": {"wood": 1}, "temp_c": 21}, "material.wood", "unknown_field"),
        ({"material": 3, "temp_c": 21}, "material", "not_an_option"),
        ({"temp_c": -41}, "temp_c", "too_low"),
        ({"temp_c": 151}, "temp_c", "too_high"),
        ({}, "temp_c", "missing"),
    ],
)
def test_what_has_no_properties_is_named(request_, field, code):
    found = problem("materials.properties", **request_)
    assert (found.field, found.code) == (field, code)
