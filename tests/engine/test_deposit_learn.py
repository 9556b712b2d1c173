"""What weighed and measured clusters teach: figures worked by hand, and what is refused."""

import math
import random

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.products.cluster import calibration as deposit_learn
from tests.strategies_deposit import LEARNED, ON_NUTS

PECANS = [{"material": "pecan", "kg_each": 0.0015, "count": 3}]


def learned(**change):
    return catalogue.call("cluster.learn", LEARNED | change)


def test_ten_clusters_less_the_weighed_nuts_are_shared_between_two_deposits():
    # 185 g less 45 g are 140 g of caramel, 14 g each: 9 of 14 parts first, 5 on top.
    reply = learned()
    assert reply["deposit_kg"] == pytest.approx(0.009)
    assert reply["second_kg"] == pytest.approx(0.005)
    assert reply["under_each_kg"] == pytest.approx(0.0045)
    # Two weighings of ±1 g: 1.41 g on ten, 9/14 of it, 1.2816 standard deviations.
    assert reply["deposit_high_kg"] - reply["deposit_kg"] == pytest.approx(0.0001165, rel=1e-3)
    assert reply["deposit_kg"] - reply["deposit_low_kg"] == pytest.approx(0.0001165, rel=1e-3)


def test_nuts_that_were_not_weighed_are_counted_and_widen_the_range():
    reply = learned(under_kg=None, under=PECANS)
    assert reply["deposit_kg"] == pytest.approx(0.009)
    # √(1² + 4.5²) = 4.61 g on ten, 9/14 of it, 1.2816 standard deviations.
    assert reply["deposit_high_kg"] - reply["deposit_kg"] == pytest.approx(0.000380, rel=2e-3)


def test_a_bed_is_what_a_cluster_of_the_measured_width_covers():
    bed = {"materials": [{"material": "peanut", "share": 1.0}], "bed_kg_m2": 4.0}
    reply = learned(under_kg=None, bed=bed)
    assert reply["under_each_kg"] == pytest.approx(4.0 * math.pi * 0.02**2)


def test_with_nothing_under_and_one_deposit_all_of_it_is_caramel():
    reply = learned(under_kg=0, second_kg=0, together_kg=0.12)
    assert (reply["deposit_kg"], reply["second_kg"]) == (pytest.approx(0.012), 0.0)
    assert reply["deposit_high_kg"] - reply["deposit_kg"] == pytest.approx(0.1 * 0.001 * 1.2815515655, rel=1e-6)


def test_width_is_the_mean_with_the_range_of_three_readings():
    # 37, 40 and 43 mm scatter by 3 mm: 1.886 · 3/√3 = 3.27 mm.
    reply = learned()
    assert reply["spread_m"] == pytest.approx(0.040)
    assert reply["spread_high_m"] - reply["spread_m"] == pytest.approx(0.003267, rel=1e-3)
    alike = learned(across_m=[0.04, 0.04, 0.04])
    assert alike["spread_high_m"] - alike["spread_m"] == pytest.approx(1.886 * 0.001 / math.sqrt(3))


@pytest.mark.parametrize("weighed", [True, False], ids=["nuts weighed", "nuts reckoned"])
def test_the_range_of_a_deposit_holds_four_of_five_simulated_scales(weighed):
    rng, held = random.Random(6), 0
    for _ in range(2000):
        nuts_kg = 0.045 * (1.0 if weighed else rng.gauss(1.0, 0.1))
        told = {"under_kg": rng.gauss(nuts_kg, 0.001)} if weighed else {"under_kg": None, "under": PECANS}
        reply = learned(together_kg=rng.gauss(0.14 + nuts_kg, 0.001), **told)
        held += reply["deposit_low_kg"] <= 0.009 <= reply["deposit_high_kg"]
    assert 0.77 < held / 2000 < 0.83


def test_the_range_of_the_width_holds_four_of_five_simulated_rulers():
    rng, held = random.Random(5), 0
    for _ in range(2000):
        reply = learned(across_m=[rng.gauss(0.04, 0.003) for _ in range(5)])
        held += reply["spread_low_m"] <= 0.04 <= reply["spread_high_m"]
    assert 0.77 < held / 2000 < 0.83


def test_the_planned_width_is_compared_at_the_weight_that_was_found():
    assert learned()["planned_spread_m"] == pytest.approx(0.038)
    assert learned()["spread_share"] == pytest.approx(40 / 38)
    # 1.5 times the caramel spreads 1.5^⅜ = 1.1642 times as far.
    heavier = learned(together_kg=0.255)
    assert heavier["deposit_kg"] == pytest.approx(0.0135)
    assert heavier["planned_spread_m"] == pytest.approx(0.038 * 1.16420, rel=1e-4)
    unknown = learned(spread_m=None)
    assert (unknown["planned_spread_m"], unknown["spread_share"]) == (None, None)


def test_more_clusters_and_more_widths_narrow_the_ranges():
    many = learned(clusters=40, together_kg=0.74, under_kg=0.18, across_m=[0.037, 0.04, 0.043] * 3)
    few = learned()
    assert many["deposit_kg"] == pytest.approx(few["deposit_kg"])
    assert many["deposit_high_kg"] - many["deposit_low_kg"] < few["deposit_high_kg"] - few["deposit_low_kg"]
    assert many["spread_high_m"] - many["spread_low_m"] < few["spread_high_m"] - few["spread_low_m"]


def test_what_is_learned_can_be_planned_with():
    found = learned()
    rows = [{"clusters": 60, "deposit_kg": found["deposit_kg"]}]
    reply = catalogue.call(
        "cluster.plan", ON_NUTS | {"rows": rows, "second_kg": found["second_kg"], "spread_m": found["spread_m"]}
    )
    assert reply["deposits_kg"] == pytest.approx(60 * 0.014)


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"clusters": 0}, "clusters", "too_low"),
        ({"clusters": 2.5}, "clusters", "not_whole"),
        ({"clusters": -10}, "clusters", "too_low"),
        ({"under_kg": 0.185}, "together_kg", "no_caramel_left"),
        ({"under_kg": 0.3}, "together_kg", "no_caramel_left"),
        ({"under_kg": -0.1}, "under_kg", "too_low"),
        ({"under_kg": None, "under": [{"material": "pecan", "kg_each": 0.01, "count": 3}]}, "together_kg",
         "no_caramel_left"),
        ({"clusters": 200, "together_kg": 0.1}, "together_kg", "deposit_out_of_reach"),
        ({"clusters": 1, "together_kg": 18.5}, "together_kg", "deposit_out_of_reach"),
        ({"across_m": [0.04, 0.04]}, "across_m", "too_few"),
        ({"across_m": [0.04, 0.04, 4.0]}, "across_m[2]", "too_high"),
        ({"across_m": [0.04, 0.0, 0.04]}, "across_m[1]", "too_low"),
        ({"across_m": [0.04, 0.09, 0.041]}, "across_m[1]", "widths_apart"),
        ({"across_m": [0.012, 0.013, 0.012]}, "across_m", "spread_too_narrow"),
        ({"across_m": [0.2, 0.21, 0.2]}, "across_m", "spread_too_wide"),
        ({"deposit_kg": None}, "deposit_kg", "missing"),
        ({"under_kg": None, "under": PECANS, "bed": {"materials": [{"material": "peanut", "share": 1}],
          "bed_kg_m2": 4}}, "under", "give_one_of"),
        ({"together_kg": "heavy"}, "together_kg", "not_a_number"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused(change, field, code):
    with pytest.raises(Problem) as caught:
        learned(**change)
    assert (caught.value.field, caught.value.code) == (field, code)


def test_students_t_leaves_a_tenth_above_it():
    # The share below t of Student's distribution, by the trapezium rule over its density.
    for free, t in enumerate(deposit_learn.STUDENT_T_90, start=2):
        scale = math.gamma((free + 1) / 2) / (math.gamma(free / 2) * math.sqrt(free * math.pi))
        ends = [scale * (1 + (i * t / 1000) ** 2 / free) ** (-(free + 1) / 2) for i in range(1001)]
        assert 0.5 + (sum(ends) - (ends[0] + ends[-1]) / 2) * t / 1000 == pytest.approx(0.9, abs=2e-4)
