"""A bowl of chocolate as a batch: planned, run by the prompts, slips and second hands included."""

import json
from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.products.chocolate import plan as bowl
from amberbench.engine.steps.temper import plan as temper
from tests.bench import Bench, planned_bowl, tells_once

LINE = temper.lines(planned_bowl()["request"] | {"targets": None})
WORK = LINE["work_low_c"], LINE["work_high_c"]


def at(step: str) -> Bench:
    """A bench brought to a step by the prompts: melted to 46 °C, seeded, read in range, a good strip."""
    bench = Bench(planned_bowl())
    bench.sets_up_bowl()
    for name, act in (
        ("melt_bowl", lambda: None),
        ("seed", lambda: bench.does("bowl_read", 60, bowl_c=46.0)),
        ("stir_seed", lambda: bench.taps(30)),
        ("temper_check", lambda: bench.does("bowl_read", 300, bowl_c=31.8)),
        ("use", lambda: bench.taps(120)),
        ("weigh_out", lambda: bench.does("bowl_used", 1800)),
    ):
        act()
        assert bench.advice["step"] == name
        if name == step:
            return bench
    raise AssertionError(step)


def reading(bench: Bench, bowl_c: float, after_s: float = 30) -> dict[str, Any]:
    bench.does("bowl_read", after_s, bowl_c=bowl_c)
    return bench.advice


def says(bench: Bench) -> str:
    return bench.advice["say"]["code"]


def test_plan_is_that_of_temper_and_says_how_long_the_bowl_holds():
    request = planned_bowl()["request"]
    reply = catalogue.call("chocolate.plan", request)
    for name, value in catalogue.call("chocolate.temper", request).items():
        assert name == "inputs" or reply[name] == value
    kept = catalogue.call(
        "chocolate.hold", {n: v for n, v in request.items() if n not in ("melt_c", "seed_c")} | {"now_c": WORK[1]}
    )
    assert reply["hold"] == {name: kept[name] for name in ("seconds_s", "low_s", "high_s")}
    fields = [row["field"] for row in reply["inputs"]]
    assert len(fields) == len(set(fields))
    assert "bowl.mass_kg" in fields


@pytest.mark.parametrize(
    ("change", "field", "code"),
    [
        ({"seed_c": 33}, "seed_c", "seed_melts"),
        ({"mass_kg": -1}, "mass_kg", "too_low"),
        ({"mass_kg": 0}, "mass_kg", "too_low"),
        ({"room_c": 29}, "room_c", "room_too_warm_for_chocolate"),
        ({"melt_c": 60}, "melt_c", "melt_too_warm"),
        ({"bowl": {"mass_kg": 0}}, "bowl.mass_kg", "too_low"),
        ({"chocolate": "caramel"}, "chocolate", "not_an_option"),
        ({"pieces": 3}, "pieces", "unknown_field"),
    ],
)
def test_bowl_that_makes_no_sense_is_refused(change, field, code):
    with pytest.raises(Problem) as caught:
        catalogue.call("chocolate.plan", planned_bowl()["request"] | change)
    assert (caught.value.field, caught.value.code) == (field, code)


def test_a_whole_bowl_runs_from_set_up_to_closed():
    bench = at("weigh_out")
    bench.does("weighed_out", 60, kg=0.4, what="chocolate")
    assert bench.advice["step"] == "leftover"
    bench.does("leftover_named", 20, lot="C-9")
    bench.taps()
    run = bench.run
    assert run["ignored"] == []
    assert (bench.advice["step"], bench.advice["clocks"]) == ("closed", [])
    assert (run["bowl"]["leftover_lot"], run["out"]) == ("C-9", [{"kg": 0.4, "what": "chocolate"}])
    assert len(json.dumps(run)) < 20_000


def test_dry_tools_and_allergens_are_told_before_anything_is_heated():
    bench = Bench(planned_bowl())
    assert says(bench) == "say.set_up_bowl"
    assert bench.advice["caution"] == {"word": "WARNING", "code": "caution.bowl_allergens"}


def test_chocolate_to_weigh_in_is_without_its_seed():
    bench = Bench(planned_bowl())
    bench.taps()
    reply = bench.plan["reply"]
    assert bench.advice["number"]["value"] == reply["melt_kg"]
    assert bench.advice["more"]["values"] == {"seed_kg": reply["seed_kg"]}


def test_bursts_get_short_near_the_melting_temperature():
    bench = at("melt_bowl")
    assert bench.advice["number"] == {"name": "seconds_s", "value": 30.0}
    assert bench.advice["caution"]["code"] == "caution.no_metal"
    bench.taps()
    (clock,) = bench.advice["clocks"]
    assert (clock["name"], clock["due_ms"], bench.advice["number"]["name"]) == (
        "stir_bowl",
        bench.now_ms + 30000,
        "due_ms",
    )
    bench.waits(31)
    assert says(bench) == "say.stir_bowl"
    assert reading(bench, 40.0)["number"]["value"] == 15.0


def test_burst_while_one_runs_is_ignored():
    bench = at("melt_bowl")
    bench.taps()
    again = bench.does("bowl_burst", 5, seconds_s=30)
    assert bench.run["ignored"] == [{"id": again, "why": "burst_running"}]


def test_bowl_above_its_limit_is_stirred_cooler_before_seed():
    bench = at("melt_bowl")
    assert reading(bench, LINE["melt_high_c"] + 1)["say"]["code"] == "say.bowl_over_limit"
    assert reading(bench, LINE["melt_high_c"])["step"] == "seed"


def test_seed_is_what_the_reading_and_the_weight_ask_for():
    bench = at("melt_bowl")
    first = reading(bench, 45.0)["number"]
    assert first == {"name": "seed_kg", "value": pytest.approx(bench.plan["reply"]["seed_kg"])}
    assert reading(bench, 50.0)["number"]["value"] > first["value"]


def test_stirred_seed_is_to_be_read_in_two_minutes():
    bench = at("stir_seed")
    (clock,) = bench.advice["clocks"]
    assert (clock["name"], clock["due_ms"]) == ("read_bowl", bench.now_ms + 120_000)
    entry = bench.advice["action"]["entry"]
    assert (entry["band_low"], entry["band_high"]) == WORK


def test_bowl_still_too_warm_wants_more_seed_and_a_cool_one_warmth():
    bench = at("stir_seed")
    warm = reading(bench, 34.0)
    assert (warm["say"]["code"], warm["action"]["kind"]) == ("say.bowl_too_warm", "seeded")
    assert 0 < warm["number"]["value"] < 0.1
    cool = reading(bench, 29.0)
    assert (cool["say"]["code"], cool["action"]["kind"]) == ("say.bowl_too_cool", "bowl_warmed")
    bench.taps()
    assert says(bench) == "say.stir_seed"


@pytest.mark.parametrize(("bowl_c", "say", "more", "kind"), [
    (31.9, "say.streaky_warm", "more.streaky_in_range", "seeded"),
    (31.6, "say.streaky_warm", "more.streaky_in_range", "seeded"),
    (31.1, "say.streaky_cool", "more.bowl_warm_it", "bowl_warmed")])  # fmt: skip
def test_streaky_strip_asks_for_seed_when_warm_and_warmth_when_cool(bowl_c, say, more, kind):
    bench = at("stir_seed")
    reading(bench, bowl_c)
    assert bench.advice["clocks"][0]["name"] == "strip"
    streaky = bench.advice["choices"][0]
    bench.does(streaky["kind"], 150, **streaky["body"])
    assert (says(bench), bench.advice["more"]["code"], bench.advice["action"]["kind"]) == (say, more, kind)
    bench.taps()
    assert bench.advice["step"] == "stir_seed"
    reading(bench, 31.6)
    assert bench.advice["step"] == "temper_check"


def test_bowl_in_use_has_a_clock_to_the_early_end_of_its_time():
    bench = at("use")
    held = catalogue.call(
        "chocolate.hold", {"mass_kg": bowl_kg(bench), "now_c": 31.8, "room_c": 20.0, "bowl": {"mass_kg": 0.8}}
    )
    (clock,) = bench.advice["clocks"]
    assert clock["name"] == "bowl"
    assert clock["due_ms"] - clock["started_ms"] == pytest.approx(1000 * held["low_s"], rel=1e-3)
    assert bench.advice["number"] == {"name": "due_ms", "value": clock["due_ms"]}


def bowl_kg(bench: Bench) -> float:
    return bench.run["weighed_kg"] + sum(one["kg"] for one in bench.run["bowl"]["seeds"])


def test_when_it_is_due_it_is_warmed_and_read_again():
    bench = at("use")
    bench.waits((bench.advice["number"]["value"] - bench.now_ms) / 1000 + 1)
    assert (bench.advice["step"], says(bench)) == ("rewarm", "say.rewarm")
    bench.taps()
    assert says(bench) == "say.read_bowl"
    assert reading(bench, 31.7)["step"] == "use"
    assert bench.advice["number"]["value"] > bench.now_ms


def test_readings_teach_how_fast_this_bowl_cools():
    bench, slow = at("use"), at("use")
    for one, fall_k in ((bench, 0.6), (slow, 0.1)):
        reading(one, 31.9, 10)
        reading(one, 31.9 - fall_k, 240)
    assert bench.run["bowl"]["faster"] > 0 > slow.run["bowl"]["faster"]
    assert bench.run["bowl"]["faster_sd"] < at("use").run["bowl"]["faster_sd"]


def test_one_absurd_reading_does_not_empty_the_clock():
    bench = at("use")
    reading(bench, 31.9, 10)
    reading(bench, 31.0, 20)
    run = bench.run["bowl"]
    assert run["faster"] <= 2 * bowl.first_faster_sd(run["request"])


def test_reading_above_the_range_in_use_asks_for_seed_and_a_new_strip():
    bench = at("use")
    advice = reading(bench, 33.0)
    assert (advice["step"], advice["say"]["code"]) == ("stir_seed", "say.bowl_too_warm")
    bench.taps()
    reading(bench, 31.8, 200)
    assert bench.advice["step"] == "temper_check"


def test_reading_below_the_range_in_use_asks_for_warmth():
    assert reading(at("use"), 30.0)["action"]["kind"] == "bowl_warmed"


def test_good_strip_of_a_bowl_read_too_warm_asks_for_another_reading():
    bench = at("use")
    reading(bench, 33.0)
    bench.does("strip_tested", 200, good=True)
    assert (bench.advice["step"], says(bench)) == ("use", "say.read_bowl")


def test_too_thick_says_what_to_do():
    bench = at("use")
    bench.does("bowl_thickened", 60)
    assert says(bench) == "say.bowl_thick"
    assert bench.advice["more"]["code"] == "more.bowl_thick"
    bench.taps()
    assert says(bench) == "say.read_bowl"


def test_nothing_left_has_no_lot():
    bench = at("weigh_out")
    bench.does("weighed_out", 60, kg=0.0, what="chocolate")
    assert bench.advice["step"] == "close"


def test_undo_takes_back_the_seed():
    bench = at("stir_seed")
    bench.does("undone", 5, event_id=bench.advice["undo"]["event_id"])
    assert bench.advice["step"] == "seed"
    assert bench.run["bowl"]["seeds"] == []


@pytest.mark.parametrize(("step", "kind", "body"), [
    ("melt_bowl", "bowl_burst", {"seconds_s": 30, "seen": 0}),
    ("seed", "seeded", {"kg": 0.2, "seen": 0}),
    ("temper_check", "bowl_read", {"bowl_c": 31.5, "seen": 2}),
    ("temper_check", "strip_tested", {"good": False, "seen": 0}),
    ("use", "bowl_warmed", {"seen": 0}),
    ("use", "bowl_thickened", {}),
    ("use", "bowl_used", {}),
])  # fmt: skip
def test_two_hands_tell_of_one_step_once(step, kind, body):
    tells_once(at(step), at(step), kind, body)


@pytest.mark.parametrize("kind", ["poured", "touched", "cut", "counted", "burst_started", "read"])
def test_what_belongs_to_a_slab_does_not_fit_a_bowl(kind):
    bench = at("use")
    told = bench.does(kind, 5, firm=True, pieces=3, seconds_s=30, surface_c=50)
    assert bench.run["ignored"] == [{"id": told, "why": "not_in_this_batch"}]


def test_what_belongs_to_a_bowl_does_not_fit_a_slab():
    bench = Bench()
    told = bench.does("bowl_read", 5, bowl_c=31)
    assert bench.run["ignored"] == [{"id": told, "why": "not_in_this_batch"}]


def test_closed_bowl_teaches_nothing_of_ovens_and_bases():
    bench = at("weigh_out")
    bench.does("closed", 60)
    told = catalogue.call("learn.contribution", {"batch_id": "b", "plan": bench.plan, "run": bench.run})["contribution"]
    assert all(told[part] is None for part in ("oven", "base", "pieces", "trim", "residue"))
    assert [row["name"] for row in told["compared"]] == ["caramel_kg"]
