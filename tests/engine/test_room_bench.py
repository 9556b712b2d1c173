"""What the room's air means, said at the bench where the hand can still do something about it."""

from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.steps.cool.chill_fields import as_told_s
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
    found = said(bench_in(room_c=27.0, humidity=0.4))
    assert (found["loosen"], found["score"]) == ("more.chill_again", "more.chill_again")
    assert found["cut"] == "more.cut_sinks_here"


def test_plan_of_an_older_version_still_asks_to_chill_the_slab():
    plan = planned_slab()
    old = {"code": "chill_slab", "values": {}}, {"code": "warm_room", "values": {"room_c": 26.0, "target_c": 27.0}}
    plan = plan | {"reply": plan["reply"] | {"warnings": list(old)}}
    assert said(until_pressed(Bench(plan)))["loosen"] == "warning.chill_slab"


def test_slab_that_its_room_leaves_too_warm_goes_into_the_fridge_and_is_touched_then():
    request = SLAB_REQUEST | {"room_c": 30.0, "humidity": 0.8}
    bench = Bench(planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    chill = bench.run["cool"]["chill"]
    assert bench.advice["more"]["code"] == "more.chill_sooner"
    (clock,) = bench.advice["clocks"]
    assert (clock["name"], clock["due_ms"]) == ("chill", bench.now_ms + 1000.0 * chill["bench_s"])
    bench.waits(chill["bench_s"] + 1)
    advice = bench.advice
    assert (advice["step"], advice["action"]["kind"], advice["caution"]["code"]) == (
        "chill",
        "chilled",
        "caution.sweats",
    )
    assert advice["say"]["values"]["chill_s"] == as_told_s(chill["seconds_s"])
    bench.does("chilled", 0.0)
    assert bench.advice["say"]["code"] == "say.chilling"
    (clock,) = bench.advice["clocks"]
    assert clock["due_ms"] == bench.now_ms + 1000.0 * as_told_s(chill["seconds_s"])
    bench.waits(as_told_s(chill["seconds_s"]) + 1)
    assert bench.advice["step"] == "touch"
    bench.does("touched", firm=False, seen=0)
    bench.waits(601)
    bench.does("touched", firm=True, seen=1)
    assert "cool" in bench.run["done"]


def test_slab_that_goes_into_the_fridge_as_soon_as_it_is_firm_stays_there_longer():
    request = SLAB_REQUEST | {"room_c": 30.0}
    bench = Bench(planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    chill = bench.run["cool"]["chill"]
    bench.waits(chill["sooner_at_s"] + 60)
    assert "chilled" in [one.get("kind") for one in bench.advice["choices"]]
    bench.does("chilled", 0.0)
    assert bench.run["cool"]["due_ms"] == bench.now_ms + 1000.0 * as_told_s(chill["sooner_s"])


def test_readings_on_the_bench_move_the_chill_of_a_warm_room():
    request = SLAB_REQUEST | {"room_c": 30.0}
    bench = Bench(planned_slab() | {"request": request, "reply": catalogue.call("slab.plan", request)})
    bench.sets_up()
    bench.melts()
    bench.does("poured")
    planned_s = bench.run["cool"]["chill"]["bench_s"]
    bench.does("slab_read", 1800, surface_c=34.0)
    wants = bench.advice["wants"]
    reply = catalogue.call(wants["name"], wants["request"])
    bench.does(wants["kind"], 1, **wants["body"], reply={name: reply[name] for name in wants["keep"]})
    assert bench.run["cool"]["chill"]["bench_s"] < planned_s
    assert bench.run["cool"]["due_ms"] == bench.run["done"]["melt"] + 1000.0 * bench.run["cool"]["chill"]["bench_s"]
    bench.does("chilled", 0.0)
    assert bench.advice["wants"] is None


def test_warm_damp_room_says_to_chill_it_wrapped_and_pat_it_dry():
    bench = bench_in(room_c=35.0, humidity=0.65)
    more = bench.advice["more"]
    assert more["code"] == "more.air_condenses"
    assert more["values"]["dew_point_c"] == pytest.approx(27.4, abs=0.1)


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
