"""What the room's air means, said at the bench where the hand can still do something about it."""

from typing import Any

import pytest

from amberbench.engine import catalogue
from tests.bench import SLAB_REQUEST, Bench, dipped_slab, planned_slab


def bench_in(**room: Any) -> Bench:
    request = SLAB_REQUEST | room
    bench = Bench(planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    return until_pressed(bench)


def dipping_in(**room: Any) -> Bench:
    request = SLAB_REQUEST | {"dip": {}} | room
    bench = Bench(dipped_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    return until_pressed(bench)


def until_pressed(bench: Bench) -> Bench:
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    bench.does("touched", 4 * 3600, firm=True)
    return bench


def said(bench: Bench) -> dict[str, str | None]:
    """What stands beside the prompt of each step from here to the last."""
    found = {}
    for _ in range(12):
        advice = bench.advice
        found[advice["step"]] = advice["more"] and advice["more"]["code"]
        if advice["action"] is None:
            return found
        bench.taps(60)
    return found


def test_good_room_is_not_spoken_of():
    assert not [code for code in said(bench_in(humidity=0.45)).values() if code and code.startswith("more.air")]


def test_warm_room_asks_to_chill_the_slab_before_it_is_scored():
    found = said(bench_in(room_c=25.0, humidity=0.4))
    assert (found["loosen"], found["score"], found["cut"]) == ("warning.chill_slab", "warning.chill_slab", None)


def test_room_too_warm_for_caramel_to_firm_says_at_the_touch_to_chill_it():
    request = SLAB_REQUEST | {"room_c": 30.0, "humidity": 0.8}
    bench = Bench(planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    for _ in range(2):
        bench.waits((bench.run["cool"]["due_ms"] - bench.now_ms) / 1000)
        assert bench.advice["step"] == "touch"
        assert bench.advice["more"]["code"] == "warning.chill_slab"
        bench.does("touched", firm=False, seen=len(bench.run["cool"]["touches"]))


def test_warm_damp_room_says_to_chill_it_wrapped_and_pat_it_dry():
    bench = bench_in(room_c=26.0, humidity=0.65)
    more = bench.advice["more"]
    assert more["code"] == "more.air_condenses"
    assert more["values"]["dew_point_c"] == pytest.approx(18.9, abs=0.1)


def test_cold_room_says_that_caramel_cracks_where_it_is_cut():
    assert said(bench_in(room_c=16.0))["cut"] == "more.air_brittle"


def test_damp_air_is_told_while_centres_rest_in_time_to_dry_it():
    bench = dipping_in(humidity=0.7)
    found = said(bench)
    assert (found["cut"], found["temper_check"]) == ("more.air_humid", "more.air_humid")


def test_warm_room_sets_chocolate_slowly_and_greys_it():
    assert said(dipping_in(room_c=23.0))["set"] == "more.air_slow"
    assert said(dipping_in(room_c=25.0))["set"] == "more.air_bloom"


def test_cut_caramel_in_damp_air_goes_sticky():
    assert said(bench_in(humidity=0.7))["cut"] == "more.air_sticky"


def test_batch_planned_before_rooms_were_known_still_runs():
    plan = planned_slab() | {"reply": {**planned_slab()["reply"]}}
    del plan["reply"]["room"]
    assert said(until_pressed(Bench(plan)))["cut"] is None
