"""Hands and thermometers err: lumps that are none, dead thermometers, slips on the keypad, another weight."""

import pytest

from tests.bench import Bench, planned_slab


def melting(burst_answers: list[bool]) -> Bench:
    """A bench after bursts that were each answered "stirs freely?" so."""
    bench = Bench()
    bench.sets_up()
    for free in burst_answers:
        bench.does("step_skipped", step="read")
        bench.taps()
        bench.waits(61)
        bench.does("stirred", 35, free=free)
    return bench


def test_lumps_that_should_be_gone_ask_for_a_reading():
    # Grain taken for lumps, burst after burst, must not scorch a caramel that nobody measures.
    assert melting([False, False]).advice["step"] == "burst"
    assert melting([False] * 6).advice["step"] == "read"


def test_very_hot_readings_stop_a_melt_that_still_has_lumps():
    bench = melting([False] * 6)
    for _ in range(6):
        if bench.advice["step"] == "read":
            bench.does("read", 10, surface_c=96.0)
    assert bench.advice["step"] == "rest"


def test_dead_thermometer_does_not_hold_up_hot_caramel():
    bench = melting([False, False, True])
    for _ in range(20):
        advice = bench.advice
        if advice["step"] == "read":
            assert advice["choices"], "nothing but a reading leads on"
            if advice["choices"][0]["kind"] == "poured":
                return
            bench.does("step_skipped", 5, step="read")
        else:
            bench.taps()
            bench.waits(61)
            if bench.advice["step"] == "stir":
                bench.does("stirred", 35, free=True)
    raise AssertionError("twenty bursts without a reading and still not to be poured by eye")


def test_undo_names_the_turn_apart_from_the_stir():
    assert melting([False]).advice["undo"]["code"] == "undo.turned"
    assert melting([False, False]).advice["undo"]["code"] == "undo.stirred"


def poured(kg: float = 1.8) -> Bench:
    bench = Bench()
    bench.does("ready_checked", 60)
    bench.does("weighed", 120, kg=kg, lot="A-117")
    bench.does("poured", 900, bulk_c=74.0)
    return bench


def test_slab_colder_than_any_room_is_questioned():
    entry = poured().advice["action"]["entry"]
    assert 0.0 < entry["low"] < 21.0
    assert 74.0 < entry["high"] < 100.0


@pytest.mark.parametrize(
    ("kg", "said"), [(1.8, None), (1.83, None), (2.5, "more.other_length"), (1.2, "more.other_length")]
)
def test_slab_of_another_weight_no_longer_matches_the_map(kg: float, said: str | None):
    bench = poured(kg)
    bench.does("flipped", 7200)
    more = bench.advice["more"]
    assert bench.advice["step"] == "score"
    assert (more and more["code"]) == said


def test_count_is_expected_by_what_was_weighed_in_and_a_slip_is_questioned():
    bench = poured(2.7)
    bench.does("cut", 7200)
    entry, planned = bench.advice["entry"], planned_slab()["reply"]["cut"]["pieces"]
    assert entry["likely_high"] == pytest.approx(1.5 * planned)
    assert entry["high"] < 10 * planned
    bench.does("counted", 60, pieces=300)
    assert bench.advice["entry"]["high"] == pytest.approx(4 * 2.7)
