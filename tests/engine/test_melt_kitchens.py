"""The measure of the planner: simulated kitchens, fixed one-minute bursts in the same kitchens beside it."""

import math

import pytest

from tests.kitchens import POUND_KG, Melts

BIG_KG, SMALL_KG = 2.5 * POUND_KG, 1.25 * POUND_KG
SAMPLE = 800
LONG = 4000


def share_at_least(share, target, number):
    """Whether a share of so many kitchens agrees with a true share of at least the target: three standard errors."""
    return share >= target - 3.0 * math.sqrt(target * (1.0 - target) / number)


def share_at_most(share, target, number):
    """The same for at most; rare events by the Poisson law: mean plus three standard deviations plus one."""
    return share * number <= target * number + 3.0 * math.sqrt(target * number) + 1.0


@pytest.fixture(scope="module")
def big():
    return Melts.run(BIG_KG, SAMPLE, seed=5)


@pytest.fixture(scope="module")
def small():
    return Melts.run(SMALL_KG, SAMPLE, seed=6)


@pytest.fixture(scope="module")
def hard():
    return Melts.run(BIG_KG, SAMPLE, seed=7, hard=True)


def test_fixed_bursts_miss_the_window_and_scorch_about_as_often_as_they_are_known_to(big, small):
    assert 0.28 <= big.fixed.inside <= 0.48
    assert 0.07 <= big.fixed.scorched <= 0.19
    assert 0.16 <= small.fixed.inside <= 0.33
    assert 0.40 <= small.fixed.scorched <= 0.63


def test_two_and_a_half_pounds_end_in_the_window(big):
    assert share_at_least(big.led.inside, 0.96, SAMPLE)
    assert share_at_most(big.led.over, 0.02, SAMPLE)
    assert share_at_most(big.led.scorched, 0.001, SAMPLE)


def test_two_and_a_half_pounds_take_hardly_more_bursts_than_fixed_ones(big):
    assert big.led.bursts <= big.fixed.bursts + 0.5 + 3.0 * big.bursts_error
    assert big.led.second_readings <= 2.0 + 0.3
    assert big.led.rests <= 0.1


def test_one_and_a_quarter_pounds_end_in_the_window_without_scorching(small):
    assert share_at_least(small.led.inside, 0.95, SAMPLE)
    assert share_at_most(small.led.scorched, 0.001, SAMPLE)
    assert small.led.bursts <= small.fixed.bursts + 1.5 + 3.0 * small.bursts_error


def test_uneven_ovens_hardly_ever_scorch_a_spot(hard):
    assert share_at_most(hard.led.scorched, 0.003, SAMPLE)
    assert hard.led.bursts <= hard.fixed.bursts + 0.9
    assert hard.fixed.scorched > 20 * hard.led.scorched


def test_every_melt_ends(big, small, hard):
    for melts in (big, small, hard):
        assert {melt.action for melt in melts.led.outcomes} == {"ready"}


@pytest.mark.prove
@pytest.mark.parametrize("seed", [101, 102])
@pytest.mark.parametrize(
    ("name", "mass_kg", "hard", "inside", "over", "spot", "more_bursts"),
    [
        ("2½ lb", BIG_KG, False, 0.96, 0.02, 0.001, 0.5),
        ("1¼ lb", SMALL_KG, False, 0.95, None, 0.001, 1.5),
        ("2½ lb, hard", BIG_KG, True, None, None, 0.003, 0.9),
    ],
)
def test_four_thousand_kitchens_reach_the_targets(seed, name, mass_kg, hard, inside, over, spot, more_bursts):
    melts = Melts.run(mass_kg, LONG, seed, hard)
    print(f"\nseed {seed}  {name:12s}  led   {melts.led}\n{'':24s}  fixed {melts.fixed}")
    assert inside is None or melts.led.inside >= inside
    assert over is None or melts.led.over <= over
    assert melts.led.scorched <= spot
    assert melts.led.bursts <= melts.fixed.bursts + more_bursts
    if name == "2½ lb":
        assert melts.led.second_readings <= 2.0
        assert melts.led.rests <= 0.1
