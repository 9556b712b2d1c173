"""The stand-up test at the bench: one cube, measured over three days, and what it says of its caramel.

Looks at 1, 24 and 72 h are from memory, the lines of the verdict (5 and 15 % lost) assumed.
"""

import pytest

from amberbench.engine import catalogue
from tests.bench import Bench, stand_up_test

HOUR_S, DAY_S = 3600, 86400


def a_bench(rng):
    """A stand-up test over its days; some looks missed, some heights that grow."""
    bench = Bench(stand_up_test())
    bench.sets_up_cube()
    height_m = 0.02
    for _ in range(rng.randrange(6)):
        height_m *= rng.uniform(0.85, 1.02)
        bench.does("stood", rng.choice([5, 3600, 90000, 300000]), height_m=height_m)
    return bench


def measured_heights(rng):
    heights, at_s, height_m = [], 0.0, rng.uniform(0.01, 0.03)
    for _ in range(rng.randrange(2, 5)):
        heights.append({"at_s": at_s, "height_m": height_m})
        at_s, height_m = at_s + rng.uniform(3600, 90000), height_m * rng.uniform(0.85, 1.0)
    return {"heights": heights, "room_c": rng.uniform(15, 30)}


SENSIBLE = {"flow.stand_up_test": measured_heights}
PLANS = [stand_up_test]
BENCHES = [a_bench]


def cube_of(heights_m: tuple[float, ...]) -> Bench:
    """The cube measured fresh and at the looks that follow."""
    bench = Bench(stand_up_test())
    bench.sets_up_cube()
    waits = (30, HOUR_S, DAY_S - HOUR_S, 2 * DAY_S)
    for wait_s, height_m in zip(waits, heights_m, strict=False):
        bench.does("stood", wait_s, height_m=height_m)
    return bench


def test_fresh_cube_is_measured_first_and_may_be_of_any_size():
    bench = cube_of(())
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("stand", "say.stand")
    assert bench.advice["entry"]["high"] == 0.1
    assert bench.advice["clocks"] == []


@pytest.mark.parametrize(("looks", "due_s"), [(1, HOUR_S), (2, DAY_S), (3, 3 * DAY_S)])
def test_its_clock_counts_to_the_next_look_however_late_the_last_one_was(looks, due_s):
    bench = cube_of((0.02, 0.0199, 0.0198)[:looks])
    (clock,) = bench.advice["clocks"]
    fresh_ms = next(one for one in bench.events if one["kind"] == "stood")["at_ms"]
    assert (clock["name"], clock["due_ms"]) == ("stand", fresh_ms + 1000 * due_s)
    assert bench.advice["number"] == {"name": "due_ms", "value": clock["due_ms"]}


def test_when_a_look_is_due_the_keypad_asks_for_a_height_no_larger_than_the_last():
    bench = cube_of((0.02, 0.0195))
    bench.waits(DAY_S)
    assert bench.advice["step"] == "stand_look"
    assert (bench.advice["entry"]["high"], bench.advice["entry"]["last"]) == (0.0195, 0.0195)


@pytest.mark.parametrize(("last_m", "verdict"), [(0.0195, "firm"), (0.018, "borderline"), (0.016, "slumps")])
def test_three_days_give_a_verdict(last_m, verdict):
    bench = cube_of((0.02, 0.0199, 0.0198, last_m))
    advice = bench.advice
    assert (advice["step"], advice["say"]["code"]) == ("close", "say.stand_" + verdict)
    assert advice["more"]["values"]["lost_percent"] == round(100 * (1 - last_m / 0.02))
    assert advice["clocks"] == []


def test_it_tells_the_same_as_the_function_at_the_desk():
    heights = (0.02, 0.0198, 0.0193, 0.0189)
    stand = cube_of(heights).run["stand"]
    since_ms = stand["heights"][0]["at_ms"]
    told = [{"at_s": (one["at_ms"] - since_ms) / 1000, "height_m": one["height_m"]} for one in stand["heights"]]
    reply = catalogue.call("flow.stand_up_test", {"heights": told, "room_c": 21.0})
    assert (stand["lost_fraction"], stand["verdict"]) == (reply["lost_fraction"], reply["verdict"])


def test_looks_however_close_together_are_told_of():
    told = [{"at_s": 0, "height_m": 0.02}, {"at_s": 5e-324, "height_m": 0.0199}]
    assert catalogue.call("flow.stand_up_test", {"heights": told, "room_c": 21.0})["verdict"] == "slumps"


def test_cube_that_grows_is_a_slip_and_does_not_count():
    bench = cube_of((0.02, 0.021))
    assert len(bench.run["stand"]["heights"]) == 1
    assert bench.run["ignored"][0]["why"] == "height_grows"


def test_who_comes_only_after_three_days_has_the_last_look():
    bench = cube_of((0.02,))
    bench.does("stood", 3 * DAY_S + 60, height_m=0.0196)
    assert (bench.advice["step"], bench.run["stand"]["verdict"]) == ("close", "firm")


def test_two_phones_that_measure_the_same_look_count_once():
    bench = cube_of((0.02,))
    bench.does("stood", HOUR_S, height_m=0.0199, seen=1)
    bench.does("stood", 5, height_m=0.0199, seen=1)
    assert len(bench.run["stand"]["heights"]) == 2


def test_stopped_before_a_second_look_it_says_that_it_knows_nothing():
    bench = cube_of((0.02,))
    bench.does("step_skipped", 60, step="stand")
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("close", "say.stand_untold")
    bench.taps()
    assert bench.run["closed_at_ms"] is not None


def test_a_slab_has_no_cube():
    bench = Bench()
    bench.does("stood", 5, height_m=0.02)
    assert bench.run["ignored"][0]["why"] == "not_in_this_batch"
