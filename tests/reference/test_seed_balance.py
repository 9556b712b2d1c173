"""Seed and heat lines against the outside world."""

from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.steps.temper import plan as temper

# Seed as a share of the whole, all of it melting: melt, end and seed in °C. Heat balance worked out apart from the
# engine, with the heats of Beckett (ed.), Industrial Chocolate Manufacture and Use, 4th ed. 2009, pp. 667–668: 1.67
# and 1.59 kJ/(kg K), 46 kJ/kg for dark and 44 for milk.
DARK = [
    (45, 32, 18, 0.24130), (45, 32, 20, 0.25014), (45, 32, 21, 0.25481), (45, 33, 18, 0.22294), (45, 34, 20, 0.21205),
    (40, 32, 18, 0.16369), (40, 31, 20, 0.19142), (42, 33, 21, 0.18762),
]  # fmt: skip
# Heat lines of chocolate in °C: melt, cool, work. A cook's table and a table of food science, both read;
# the second cools white to 24–25 °C, where the two disagree the first is kept.
PRACTICE = {
    "dark_chocolate": [((50, 55), (28, 29), (31, 32)), ((45, 50), (28, 29), None)],
    "milk_chocolate": [((45, 50), (27, 28), (30, 31)), ((40, 45), (27, 28), None)],
    "white_chocolate": [((45, 50), (26, 27), (29, 30)), ((40, 40), None, None)],
}


def tempered(**request: Any) -> dict[str, Any]:
    return catalogue.call("chocolate.temper", {"mass_kg": 2.0, "room_c": 20.0} | request)


def own(work_high_c):
    return {"melt_low_c": 40, "melt_high_c": 50, "cool_low_c": 28, "cool_high_c": 29, "work_low_c": 30,
            "work_high_c": work_high_c}  # fmt: skip


def test_bowl_that_is_warm_with_its_melt_takes_more_seed():
    """Worked out apart: 1.5 kg of glass, 800 J/(kg K), of which 60 % follows (assumed), from 45 to 32 °C give 9.36 kJ;
    1 kg in all with seed of 20 °C: (1 − s) · 21.71 + 9.36 = s · 65.08 kJ. Without the bowl's heat the mix of it ends
    above the seed's melting point of 33.8 °C and no crystal survives."""
    found = tempered(mass_kg=1.0, melt_c=45, seed_c=20, bowl={"mass_kg": 1.5})
    assert found["seed_share"] == pytest.approx(0.358, abs=5e-4)
    mixed_c = 45 - (0.25 * (46.0 + 1.59 * 12)) / (0.75 * 1.67 + 0.25 * 1.67 + 0.6 * 1.5 * 0.8)
    assert mixed_c > 33.8


def test_bowl_too_heavy_for_its_chocolate_is_told():
    found = tempered(mass_kg=0.5, melt_c=45, seed_c=20, bowl={"mass_kg": 3.0})
    assert found["seed_share"] == 0.5
    assert [one["code"] for one in found["warnings"]] == ["small_bowl", "heavy_bowl"]


def test_seed_at_the_bench_is_that_of_the_plan():
    planned = catalogue.call("chocolate.plan", {"mass_kg": 2.0, "room_c": 20.0, "melt_c": 45, "bowl": {"mass_kg": 1.0}})
    assert temper.seed_kg(planned["bowl_request"], planned["melt_kg"], 45.0) == pytest.approx(planned["seed_kg"])


def test_dark_from_45_to_32_takes_a_quarter_of_seed_at_20():
    found = tempered(melt_c=45, seed_c=20)
    assert found["seed_share"] == pytest.approx(0.250, abs=5e-4)
    assert found["seed_kg"] == pytest.approx(0.50028, abs=1e-5)
    assert found["seed_kg"] + found["melt_kg"] == pytest.approx(2.0)


@pytest.mark.parametrize(("melt_c", "end_c", "seed_c", "share"), DARK)
def test_seed_share_of_the_table(melt_c, end_c, seed_c, share):
    found = tempered(melt_c=melt_c, seed_c=seed_c, targets=own(end_c))
    assert found["seed_share"] == pytest.approx(share, abs=6e-6)


def test_milk_from_45_to_30_and_a_half_takes_29_per_cent():
    found = tempered(chocolate="milk_chocolate", melt_c=45, seed_c=21, targets=own(30.5))
    assert found["seed_share"] == pytest.approx(0.291, abs=5e-4)


@pytest.mark.parametrize("chocolate", PRACTICE)
def test_heat_lines_are_those_of_practice(chocolate):
    steps = {step["name"]: (step["low_c"], step["high_c"]) for step in tempered(chocolate=chocolate)["steps"]}
    for melt, cool, work in PRACTICE[chocolate]:
        assert steps["melt"][0] <= melt[0]
        assert steps["melt"][1] >= melt[1]
        assert cool is None or steps["cool"] == cool
        assert work is None or steps["work"] == work


def test_milk_and_white_are_never_melted_above_50():
    """Common practice, read: milk protein suffers above 50 °C."""
    for chocolate in ("milk_chocolate", "white_chocolate"):
        assert tempered(chocolate=chocolate)["steps"][0]["high_c"] == 50


def test_seed_never_melts_above_its_crystals():
    """Form V, the one wanted, melts at 33.8 °C (Wille & Lutton 1966, melting point second-hand)."""
    for chocolate in PRACTICE:
        assert tempered(chocolate=chocolate)["steps"][1]["high_c"] == pytest.approx(33.8)
