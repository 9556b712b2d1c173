"""Two phones, one batch: who has it, and what two hands tapped without hearing of each other."""

from typing import Any

import pytest

from amberbench.engine import catalogue
from tests.bench import Bench


class Two:
    """One batch on two phones that do not hear of each other until the end."""

    def __init__(self, bench: Bench) -> None:
        self.one, self.other = bench, Bench(bench.plan, device="phone-b")
        self.other.events = list(bench.events)
        self.other.now_ms = bench.now_ms

    def both_tap(self, late_s: float = 2.0) -> None:
        """Both press the button of the step they see, the second so much later."""
        self.other.now_ms = self.one.now_ms
        self.one.taps()
        self.other.taps(1.0 + late_s)
        self.one.now_ms = self.other.now_ms

    def both_do(self, kind: str, late_s: float = 2.0, **body: Any) -> None:
        self.one.does(kind, 5, **body)
        self.other.now_ms = self.one.now_ms
        self.other.does(kind, late_s, **body)

    def both_wait(self, seconds_s: float) -> None:
        self.one.waits(seconds_s)
        self.other.now_ms = self.one.now_ms

    @property
    def run(self) -> dict[str, Any]:
        """What both fold to once each has the other's events."""
        events = {event["id"]: event for event in self.one.events + self.other.events}
        return catalogue.call("run.replay", {"plan": self.one.plan, "events": list(events.values())})["run"]


def melting() -> Bench:
    bench = Bench()
    bench.sets_up()
    return bench


def cooling() -> Bench:
    bench = melting()
    bench.melts()
    bench.taps(30)
    return bench


def as_if_one(two: Two) -> None:
    """The merged log comes to what one phone alone has, but for what is not counted."""
    run, alone = two.run, two.one.run
    assert len(run.pop("ignored")) > len(alone.pop("ignored"))
    assert run == alone


def test_every_step_tapped_on_both_phones_counts_once():
    two = Two(Bench())
    for _ in range(2):
        two.both_tap()
    for _ in range(2):
        two.both_tap()
        two.both_wait(61)
        two.both_tap()
    as_if_one(two)
    assert len(two.run["melt"]["bursts"]) == 2


def test_a_stir_told_late_does_not_end_the_next_burst():
    two = Two(melting())
    two.both_tap()
    two.both_wait(61)
    two.other.now_ms = two.one.now_ms + 4000
    two.one.taps()
    two.one.taps()  # the next burst is on
    two.other.taps()  # the other hand still tells of the stir before it
    as_if_one(two)
    assert two.run["melt"]["burning"] is not None


def test_out_early_told_late_leaves_the_clock_of_the_next_burst_alone():
    two = Two(melting())
    two.both_tap()
    early = {"started_ms": two.one.run["melt"]["burning"]["started_ms"]}
    two.one.does("burst_ended", 20, **early)
    two.one.taps(10)
    two.one.taps(5)
    two.other.now_ms = two.one.now_ms
    two.other.does("burst_ended", 2, **early)
    as_if_one(two)


@pytest.mark.parametrize(("first_c", "second_c", "counted"), [(72.0, 72.0, 1), (72.0, 75.5, 2)])
def test_one_reading_typed_twice_is_one_and_two_that_differ_are_two(first_c, second_c, counted):
    bench = melting()
    bench.melts()
    two = Two(bench)
    before = sum(one["kind"] == "reading" for one in bench.run["melt"]["history"])
    two.one.does("read", 5, surface_c=first_c, seen=before)
    two.other.does("read", 8, surface_c=second_c, seen=before)
    after = sum(one["kind"] == "reading" for one in two.run["melt"]["history"])
    assert after == before + counted


def test_the_same_figure_read_again_on_one_phone_counts_again():
    bench = cooling()
    for seen in range(3):
        bench.does("slab_read", 600, surface_c=50.0, seen=seen)
    assert len(bench.run["cool"]["readings"]) == 3


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("slab_read", {"surface_c": 44.0, "seen": 0}),
        ("touched", {"firm": False, "seen": 0}),
        ("touched", {"firm": True, "seen": 0}),
        ("counted", {"pieces": 201}),
        ("weighed_out", {"kg": 0.1, "what": "rest", "seen": 0}),
        ("weighed_out", {"kg": 0.03, "what": "bowl", "seen": 0}),
        ("step_skipped", {"step": "flip"}),
        ("freed", {}),
        ("cut", {}),
        ("closed", {}),
    ],
)
def test_what_both_hands_tell_after_pouring_counts_once(kind, body):
    two = Two(cooling())
    two.both_do(kind, **body)
    as_if_one(two)


def test_a_pour_and_a_rest_told_twice_count_once():
    bench = melting()
    bench.melts()
    resting, pouring = Two(bench), Two(Bench(bench.plan))
    resting.both_do("rested", seconds_s=60)
    as_if_one(resting)
    pouring.both_do("poured", bulk_c=74.0)
    as_if_one(pouring)


def test_the_phone_that_opened_a_batch_has_it_until_another_takes_it_over():
    two = Two(melting())
    assert two.run["held"]["device_id"] == "phone-a"
    two.both_tap()
    due_ms = [clock["due_ms"] for clock in two.one.advice["clocks"]]
    two.other.does("taken_over", 10)
    run = two.run
    assert run["held"] == {"device_id": "phone-b", "since_ms": two.other.now_ms}
    advice = catalogue.call("run.advise", {"run": run, "at_ms": two.other.now_ms})
    assert [clock["due_ms"] for clock in advice["clocks"]] == due_ms
    assert advice["undo"]["code"] == "undo.burst_started"


def test_two_phones_that_take_it_over_at_once_agree_on_one():
    two = Two(melting())
    two.both_do("taken_over", 1.0)
    assert two.run["held"]["device_id"] == "phone-b"
    two.one.does("taken_over", 60)
    assert two.run["held"]["device_id"] == "phone-a"


def test_a_reading_skipped_late_by_the_other_hand_skips_no_later_one():
    bench = melting()
    while bench.advice["step"] != "read":
        step = bench.advice["step"]
        bench.does("stirred", 40, free=True) if step in ("turn", "stir") else bench.taps()
        bench.waits(61 if step == "burst" else 0)
    two = Two(bench)
    two.both_do("step_skipped", step="read")
    as_if_one(two)
