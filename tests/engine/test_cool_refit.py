"""What readings and touch tests do to a plan; the answer itself is proved in tests/reference/test_cooling_refit.py."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core import check
from amberbench.engine.core.problems import Problem
from amberbench.engine.steps.cool import cooling_curve as cooling
from amberbench.engine.steps.cool import refit
from amberbench.engine.steps.cool.fields import COOL

USUAL = {"thickness_m": 0.0127, "base": "aluminium_tray"}
HOUR_S = 3600.0


def plan(**changes):
    return catalogue.call("cool.plan", USUAL | changes)


def refitted(readings=(), touches=(), **changes):
    request = {
        "readings": [{"at_s": at_s, "surface_c": surface_c} for at_s, surface_c in readings],
        "touches": [{"at_s": at_s, "firm": firm} for at_s, firm in touches],
    }
    return catalogue.call("cool.refit", USUAL | request | changes)


def read(times, loss_factor=1.0, low_k=1.0):
    """Readings the model itself would give at a loss factor, low_k K cold."""
    slab = cooling.Slab(check.checked(COOL, USUAL))
    return [
        (at, surface_c - low_k)
        for at, (_, surface_c) in zip(times, refit.at_times(slab, loss_factor, times), strict=True)
    ]


TIMES = (1200.0, 2400.0, 3600.0)


def test_nothing_learnt_leaves_the_plan_as_it_is():
    before, after = plan(), refitted()
    assert (after["loss_factor"], after["loss_factor_sd"]) == (1.0, pytest.approx(0.2))
    assert after["ready_s"] == before["ready_s"]
    assert after["milestones"] == before["milestones"]


def test_readings_as_expected_only_narrow_the_range():
    before, after = plan(), refitted(read(TIMES))
    assert after["loss_factor"] == pytest.approx(1.0, abs=0.003)
    assert after["ready_s"] == pytest.approx(before["ready_s"], rel=0.003)
    assert before["ready_low_s"] < after["ready_low_s"] < after["ready_high_s"] < before["ready_high_s"]


def test_a_reading_warmer_than_expected_means_later():
    at_s, surface_c = read((2400.0,))[0]
    assert refitted([(at_s, surface_c + 3.0)])["ready_s"] > plan()["ready_s"]
    assert refitted([(at_s, surface_c - 3.0)])["ready_s"] < plan()["ready_s"]


@pytest.mark.parametrize("truth", [0.55, 0.8, 1.0, 1.25, 1.8])
def test_steady_readings_find_the_loss_factor(truth):
    after = refitted(read(TIMES, truth), reading_sd_k=0.1)
    assert after["loss_factor"] == pytest.approx(truth, rel=0.01)
    assert after["loss_factor_sd"] < 0.06


def test_a_thermometer_said_to_run_true_is_taken_at_its_word():
    after = refitted(read(TIMES, 1.2, low_k=0.0), reading_low_k=0.0, reading_sd_k=0.1)
    assert after["loss_factor"] == pytest.approx(1.2, rel=0.01)


def test_scattered_readings_are_believed_less_than_steady_ones():
    steady = read(TIMES, 1.3)
    scattered = [(at_s, surface_c + off) for (at_s, surface_c), off in zip(steady, (2.5, -2.5, 0.0), strict=True)]
    assert 1.0 < refitted(scattered)["loss_factor"] < refitted(steady)["loss_factor"]
    assert refitted(scattered)["loss_factor_sd"] > refitted(steady)["loss_factor_sd"]


def test_one_reading_off_the_mark_does_not_carry_the_rest():
    readings = [*read((1200.0, 1800.0, 2400.0, 3000.0)), (2700.0, 5.0)]  # of the bar beside the slab
    assert refitted(readings)["loss_factor"] == pytest.approx(1.0, abs=0.1)


def test_order_of_readings_and_touches_does_not_matter():
    readings, touches = read(TIMES, 1.2), [(6000.0, False), (6600.0, True)]
    forward, backward = refitted(readings, touches), refitted(readings[::-1], touches[::-1])
    assert forward["loss_factor"] == backward["loss_factor"]
    assert forward["milestones"] == backward["milestones"]


def test_two_readings_at_the_same_time_count_twice():
    at_s, surface_c = read((2400.0,), 1.3)[0]
    once, twice = refitted([(at_s, surface_c)]), refitted([(at_s, surface_c)] * 2)
    assert twice["loss_factor_sd"] < once["loss_factor_sd"]


def test_not_yet_means_ten_minutes_more_at_the_least():
    ready_s = plan()["ready_s"]
    for late_s in (0.0, HOUR_S, 5 * HOUR_S):
        after = refitted(touches=[(ready_s + late_s, False)])
        assert after["ready_s"] >= ready_s + late_s + 600.0
        assert after["ready_low_s"] >= ready_s + late_s + 600.0
        assert after["loss_factor"] < 1.0


def test_firm_means_ready():
    early_s = 0.6 * plan()["ready_s"]
    after = refitted(touches=[(early_s, True)])
    assert after["ready_s"] == after["ready_high_s"] == early_s
    assert after["loss_factor"] > 1.0
    assert max(one["at_s"] for one in after["milestones"]) == early_s


def test_firm_after_the_expected_time_teaches_little():
    late_s = 1.5 * plan()["ready_s"]
    after = refitted(touches=[(late_s, True)])
    assert after["loss_factor"] == pytest.approx(1.0, abs=0.05)


def test_not_yet_before_the_expected_time_teaches_little():
    after = refitted(touches=[(0.4 * plan()["ready_s"], False)])
    assert after["loss_factor"] == pytest.approx(1.0, abs=0.02)


def test_of_two_touches_that_disagree_the_later_decides():
    ready_s = plan()["ready_s"]
    softer = refitted(touches=[(0.9 * ready_s, True), (ready_s, False)])
    assert softer["ready_s"] >= ready_s + 600.0


def test_an_absurd_reading_is_survived():
    for reading in ((0.0, 150.0), (1e6, -10.0), (3600.0, 150.0), (3600.0, -10.0)):
        after = refitted([reading])
        assert 0.5 < after["loss_factor"] < 2.0


def test_sixty_readings_and_sixty_touches_are_taken():
    times = [100.0 * n for n in range(1, 61)]
    after = refitted(read(times, 1.1), [(at_s, False) for at_s in times])
    assert after["loss_factor"] == pytest.approx(1.1, abs=0.1)


@pytest.mark.parametrize(
    ("request_part", "field", "code"),
    [
        ({"readings": [{"at_s": -5.0, "surface_c": 60.0}]}, "readings[0].at_s", "too_low"),
        ({"readings": [{"at_s": 5.0, "surface_c": 800.0}]}, "readings[0].surface_c", "too_high"),
        ({"readings": [{"at_s": 5.0}]}, "readings[0].surface_c", "missing"),
        ({"readings": {"at_s": 5.0}}, "readings", "not_a_list"),
        ({"touches": [{"at_s": 5.0, "firm": 1}]}, "touches[0].firm", "not_true_or_false"),
        ({"touches": [[5.0, True]]}, "touches[0]", "not_a_record"),
        ({"touches": [{"at_s": 5.0, "firm": True}] * 61}, "touches", "too_many"),
        ({"reading_sd_k": 0.0}, "reading_sd_k", "too_low"),
    ],
)
def test_evidence_that_makes_no_sense_is_a_problem(request_part, field, code):
    with pytest.raises(Problem) as caught:
        catalogue.call("cool.refit", USUAL | request_part)
    assert (caught.value.field, caught.value.code) == (field, code)
