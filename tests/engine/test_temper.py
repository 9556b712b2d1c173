"""Tempering, holding the bowl, salting in time."""

import math
from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.physics import pot as heating
from amberbench.engine.steps.temper import plan as temper

OWN = {"melt_low_c": 42, "melt_high_c": 48, "cool_low_c": 26, "cool_high_c": 27, "work_low_c": 29, "work_high_c": 30.5}


def tempered(**request: Any) -> dict[str, Any]:
    return catalogue.call("chocolate.temper", {"mass_kg": 2.0, "room_c": 20.0} | request)


def held(**request: Any) -> dict[str, Any]:
    return catalogue.call("chocolate.hold", {"mass_kg": 2.0, "now_c": 32.0, "room_c": 20.0} | request)


def test_shop_s_own_chocolate_has_its_own_heat_lines():
    found = tempered(targets=OWN)
    assert [(step["name"], step["low_c"], step["high_c"]) for step in found["steps"]] == [
        ("melt", 42, 48), ("seed", 30.5, 33.8), ("cool", 26, 27), ("work", 29, 30.5),
    ]  # fmt: skip
    assert "temper.work_low_c" not in {row["field"] for row in found["inputs"]}


def test_seed_is_as_warm_as_the_room_when_nobody_says():
    assert tempered(melt_c=45)["seed_share"] == tempered(melt_c=45, seed_c=20)["seed_share"]


def test_warmer_melt_and_warmer_seed_take_more_seed():
    for field, values in (("melt_c", (45, 48, 52)), ("seed_c", (12, 20, 28))):
        shares = [tempered(**{"melt_c": 48, field: value})["seed_share"] for value in values]
        assert shares == sorted(set(shares))


def test_small_bowl_is_told():
    assert [one["code"] for one in tempered(mass_kg=0.5)["warnings"]] == ["small_bowl"]
    assert tempered(mass_kg=0.9)["warnings"] == []


@pytest.mark.parametrize(
    ("request_", "field", "code"),
    [
        ({"seed_c": 34}, "seed_c", "seed_melts"),
        ({"seed_c": 32}, "seed_c", "seed_melts"),
        ({"melt_c": 44}, "melt_c", "melt_too_cool"),
        ({"melt_c": 56}, "melt_c", "melt_too_warm"),
        ({"room_c": 28}, "room_c", "room_too_warm_for_chocolate"),
        ({"targets": OWN | {"work_low_c": 26.5}}, "targets.work_low_c", "heat_line_too_low"),
        ({"targets": OWN | {"melt_high_c": 41}}, "targets.melt_high_c", "heat_line_too_low"),
    ],
)
def test_what_cannot_be_tempered_is_refused(request_, field, code):
    with pytest.raises(Problem) as caught:
        tempered(**request_)
    assert (caught.value.field, caught.value.code) == (field, code)


@pytest.mark.parametrize("bowl_kg", [None, 1.2])
def test_bowl_cools_as_a_fine_integration_of_its_losses_says(bowl_kg):
    """Losses written out again: McAdams' 1.32 (ΔT/d)^¼ and radiation at 0.95 from a half ball of chocolate.

    Crystals give off 2 % of 46 kJ/kg per kelvin (assumed)."""
    radius_m = (1.5 * 2.0 / 1300.0 / math.pi) ** (1 / 3)
    joule_k = 2.0 * (1590.0 + 0.02 * 46000.0) + (0.6 * 800.0 * bowl_kg if bowl_kg else 0.0)
    temp_c, seconds = 32.0, 0.0
    while temp_c > 31.0:
        hot, cold = temp_c + 273.15, 293.15
        watt = 1.32 * ((temp_c - 20) / (2 * radius_m)) ** 0.25 * (temp_c - 20) + 0.95 * 5.670374419e-8 * (
            hot**4 - cold**4
        )
        temp_c -= 0.1 * 3 * math.pi * radius_m**2 * watt / joule_k
        seconds += 0.1
    bowl = {"mass_kg": bowl_kg} if bowl_kg else None
    assert held(bowl=bowl)["seconds_s"] == pytest.approx(seconds, rel=1e-3)


@pytest.mark.parametrize("mass_kg", [1.0, 2.0, 3.0])
def test_bowl_is_never_left_longer_than_practice_leaves_it(mass_kg):
    """Common practice, no published source: warm it a little every 15 to 20 minutes."""
    found = held(mass_kg=mass_kg, bowl={"mass_kg": 0.5 * mass_kg})
    assert found["low_s"] < found["seconds_s"] < found["high_s"]
    assert 4 * 60 < found["seconds_s"] < 20 * 60


def test_practice_lies_in_the_range_of_a_usual_bowl():
    """Common practice, no published source: every 15 to 20 minutes. By sensible heat alone 8½ minutes, 5 to 14."""
    found = held(mass_kg=3.0, bowl={"mass_kg": 1.5})
    assert found["low_s"] < 15 * 60 < 20 * 60 < found["high_s"]


def test_crystals_add_what_their_share_of_the_latent_heat_says():
    """Per kelvin and kilogram 0.02 · 46 kJ on 1.59 kJ of sensible heat: 1.58 times as long."""
    sensible_s = temper.cooling_s(heating.Pot(2.0, "dark_chocolate", None, 20.0), 0.0, 32.0, 31.0)
    assert held()["seconds_s"] / sensible_s == pytest.approx(1 + 0.02 * 46.0 / 1.59)


def test_latent_heat_is_published_but_for_white_chocolate():
    for reply in (tempered, held):
        for chocolate, basis in (("dark_chocolate", "published"), ("white_chocolate", "assumed")):
            rows = reply(chocolate=chocolate)["inputs"]
            assert [row["basis"] for row in rows if row["field"] == "temper.latent_heat"] == [basis]


def test_more_chocolate_and_a_warmer_room_hold_longer():
    assert held(mass_kg=1.0)["seconds_s"] < held()["seconds_s"] < held(mass_kg=4.0)["seconds_s"]
    assert held(room_c=16)["seconds_s"] < held()["seconds_s"] < held(room_c=25)["seconds_s"]


@pytest.mark.parametrize(("now_c", "state", "remedy"), [
    (33.0, "too_warm", "chocolate_too_warm"), (30.0, "too_cool", "chocolate_too_cool")])  # fmt: skip
def test_bowl_outside_its_range_has_no_time_left_but_a_remedy(now_c, state, remedy):
    found = held(now_c=now_c)
    assert (found["state"], found["seconds_s"], found["remedy"]["code"]) == (state, 0.0, remedy)


def test_bowl_at_the_end_of_its_range_has_no_time_left():
    assert held(now_c=31.0)["seconds_s"] == 0.0


def test_room_that_does_not_cool_the_bowl_is_refused():
    with pytest.raises(Problem) as caught:
        held(room_c=31.0)
    assert caught.value.code == "room_too_warm_for_chocolate"


@pytest.mark.parametrize(("dip_s", "set_s", "every"), [
    (20, 120, 4), (25, 120, 3), (30, 120, 3), (20, 180, 6), (28, 90, 2), (200, 120, 1)])  # fmt: skip
def test_salt_goes_on_before_the_first_has_set(dip_s, set_s, every):
    assert catalogue.call("chocolate.salting", {"dip_s": dip_s, "set_s": set_s})["every"] == every


@pytest.mark.parametrize("dip_s", [4, 9, 15, 20, 33, 47])
def test_last_of_the_pieces_has_its_salt_while_its_coat_still_takes_it(dip_s):
    """The first of them is dipped at once and salted last, each in two seconds."""
    every = catalogue.call("chocolate.salting", {"dip_s": dip_s, "set_s": 120})["every"]
    assert every * dip_s + every * 2 <= 0.8 * 120
    assert (every + 1) * (dip_s + 2) > 0.8 * 120


def test_salt_for_all_pieces():
    found = catalogue.call("chocolate.salting", {"dip_s": 25, "salt_each_kg": 0.0001, "pieces": 80})
    assert found["salt_kg"] == pytest.approx(0.008)
    assert catalogue.call("chocolate.salting", {"dip_s": 25, "pieces": 80})["salt_kg"] is None


@pytest.mark.parametrize(("salt_each_kg", "code"), [(0, "too_low"), (-0.001, "too_low"), (0.1, "too_high")])
def test_salt_of_nothing_or_of_100_g_is_refused(salt_each_kg, code):
    with pytest.raises(Problem) as caught:
        catalogue.call("chocolate.salting", {"dip_s": 25, "salt_each_kg": salt_each_kg})
    assert (caught.value.field, caught.value.code) == ("salt_each_kg", code)
