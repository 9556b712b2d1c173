"""A slab whose block is melted in a water jacket: planned, run by the prompts, slips included, and learnt from."""

from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.steps.jacket import plan as jacket
from tests.bench import SLAB_REQUEST, Bench, jacket_slab

REQUEST = jacket_slab()["request"]


def planned(**changes: Any) -> dict[str, Any]:
    return catalogue.call("slab.plan", REQUEST | {"jacket": REQUEST["jacket"] | changes})


def in_jacket() -> Bench:
    """A bench with the block just in."""
    bench = Bench(jacket_slab())
    bench.sets_up()
    bench.taps()
    return bench


# The plan ---------------------------------------------------------------------------------------------------------


def test_jacket_plan_has_hours_instead_of_bursts_and_the_rest_as_ever():
    reply, oven = planned(), catalogue.call("slab.plan", SLAB_REQUEST)
    assert reply["melt"] is None
    assert oven["jacket"] is None
    assert 3600 < reply["jacket"]["low_s"] < reply["jacket"]["seconds_s"] < reply["jacket"]["high_s"] < 4 * 3600
    for part in ("caramel_kg", "pour", "cut", "cool", "frames"):
        assert reply[part] == oven[part]


def test_chopped_and_thin_blocks_are_soft_sooner_than_a_cube():
    cube, thin, chopped = planned(), planned(thickness_m=0.05), planned(chopped_m=0.03)
    assert thin["jacket"]["seconds_s"] < cube["jacket"]["seconds_s"]
    assert chopped["jacket"]["seconds_s"] < cube["jacket"]["seconds_s"]


def test_block_of_a_thickness_has_the_weight_that_goes_in():
    for thickness_m in (None, 0.05):
        request = jacket.request_for(planned(thickness_m=thickness_m)["melt_request"])
        sides = request["block"]
        volume_m3 = sides["length_m"] * sides["width_m"] * sides["height_m"]
        density = catalogue.call("materials.properties", {"material": "caramel", "temp_c": 21.0})["density_kg_m3"]
        assert volume_m3 * density == pytest.approx(1.8)


def test_jacket_plan_names_the_water_and_what_nobody_measured():
    rows = {row["field"]: row for row in planned()["inputs"]}
    assert rows["jacket.water_c"]["basis"] == "typed"
    assert rows["jacket.wall_w_m2k"]["basis"] == "assumed"
    kept = catalogue.call("slab.plan", REQUEST | {"basis": {"jacket.water_c": "assumed"}})["inputs"]
    assert next(row for row in kept if row["field"] == "jacket.water_c")["measure_by"] == "jacket_water"


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"jacket": {"water_c": 93.3}}, "jacket.water_c", "jacket_above_limit"),
        ({"jacket": {"water_c": 100.0}}, "jacket.water_c", "jacket_above_limit"),
        ({"jacket": {"water_c": 71.0}}, "jacket.water_c", "jacket_too_cool"),
        ({"jacket": {}}, "jacket.water_c", "missing"),
        ({"jacket": {"water_c": 88.0, "chopped_m": 0}}, "jacket.chopped_m", "too_low"),
        ({"jacket": {"water_c": 141.0}}, "jacket.water_c", "too_high"),
        (
            {"have": {"kg": 0.06}, "jacket": {"water_c": 88.0, "thickness_m": 0.3}},
            "jacket.thickness_m",
            "not_the_shortest_side",
        ),
        ({"windows": {"low_c": 76.0, "high_c": 72.0}}, "windows.low_c", "window_upside_down"),
        ({"start_c": 75.0}, "start_c", "start_above_window"),
        ({"jacket": None}, "oven", "missing"),
    ],
)
def test_jacket_that_makes_no_sense_is_refused_by_name(changes, field, code):
    with pytest.raises(Problem) as caught:
        catalogue.call("slab.plan", REQUEST | {"max_length_m": 5.0, "max_width_m": 5.0} | changes)
    problem = caught.value
    assert (problem.field, problem.code) == (field, code)
    if problem.code.startswith("jacket_"):
        assert (problem.given, problem.low, problem.high) == (changes["jacket"]["water_c"], 73.0, 93.3)


# At the bench -----------------------------------------------------------------------------------------------------


def test_water_is_asked_for_before_anything_else_and_the_block_goes_in_after_the_scale():
    bench = Bench(jacket_slab())
    assert bench.advice["say"]["code"] == "say.set_up_jacket"
    assert bench.advice["more"]["values"] == {"jacket_c": 88.0, "limit_c": 93.3}
    bench.sets_up()
    assert bench.advice["step"] == "block_in"
    assert bench.advice["clocks"] == []


def test_first_look_is_at_the_low_end_of_the_plan():
    bench, low_s = in_jacket(), jacket_slab()["reply"]["jacket"]["low_s"]
    clock = next(one for one in bench.advice["clocks"] if one["name"] == "soften")
    assert (clock["due_ms"] - clock["started_ms"]) / 1000 == pytest.approx(low_s)
    bench.until("look")
    assert bench.advice["say"]["code"] == "say.look"


def test_another_weight_than_planned_takes_another_time():
    bench = Bench(jacket_slab())
    bench.does("ready_checked", 60)
    bench.does("weighed", 60, kg=3.6, lot="A")
    assert bench.advice["action"]["body"]["low_s"] > 1.2 * jacket_slab()["reply"]["jacket"]["low_s"]


def test_water_is_topped_up_every_hour_of_a_long_melt():
    bench = in_jacket()
    assert [one["name"] for one in bench.advice["clocks"]] == ["water", "soften"]
    bench.waits(3600)
    assert bench.advice["step"] == "top_up"
    bench.taps()
    assert bench.advice["step"] == "soften"


def test_lumps_put_the_look_off_and_all_times_with_it():
    bench = in_jacket()
    bench.until("look")
    before = bench.run["melt"]["jacket"]
    bench.does("stirred", 1, free=False)
    after = bench.run["melt"]["jacket"]
    assert bench.advice["step"] in ("soften", "top_up")
    assert 600_000 <= after["due_ms"] - bench.now_ms <= 2_700_000
    assert after["slower"] > before["slower"]


def test_not_yet_by_two_hands_counts_once():
    bench = in_jacket()
    bench.until("look")
    bench.does("stirred", 1, free=False)
    due_ms = bench.run["melt"]["jacket"]["due_ms"]
    bench.does("stirred", 2, free=False)
    assert bench.run["melt"]["jacket"]["due_ms"] == due_ms
    assert bench.run["ignored"][-1]["why"] == "not_due_yet"


def test_free_before_the_clock_asks_for_a_reading_at_once():
    bench = in_jacket()
    bench.waits(1800)
    bench.does("stirred", 1, free=True)
    assert bench.advice["step"] == "read"
    assert bench.advice["entry"]["band_low"] == 71.0


def test_reading_below_the_window_goes_on_and_asks_again():
    bench = in_jacket()
    bench.until("look")
    bench.does("stirred", 1, free=True)
    bench.does("read", 20, surface_c=60.0)
    assert bench.advice["say"]["code"] == "say.lid_on"
    wait_s = (bench.advice["number"]["value"] - bench.now_ms) / 1000
    assert 180 <= wait_s <= 1800
    bench.waits(wait_s + 1)
    assert bench.advice["step"] == "read"


def test_reading_in_the_window_leads_to_the_pour_but_not_for_ever():
    bench = in_jacket()
    bench.until("look")
    bench.does("stirred", 1, free=True)
    bench.does("read", 20, surface_c=73.0)
    assert bench.advice["step"] == "pour"
    # The wall goes on heating: before it may have left the window, it is read once more.
    bench.waits(1801)
    assert bench.advice["step"] == "read"
    bench.does("read", 20, surface_c=74.0)
    bench.taps()
    assert bench.advice["step"] == "cool"
    assert bench.run["cool"]["request"]["start_c"] == 75.0


def test_too_warm_comes_out_of_the_jacket_and_far_too_warm_rings():
    bench = in_jacket()
    bench.until("look")
    bench.does("stirred", 1, free=True)
    bench.does("read", 20, surface_c=79.0)
    assert (bench.advice["step"], bench.advice["more"]["code"]) == ("rest", "reason.over_window")
    bench.does("read", 20, surface_c=86.0)
    assert bench.advice["clocks"][0]["sound"] == "too_hot"
    bench.taps()
    assert bench.advice["clocks"][0]["name"] == "rest"
    bench.waits(3600)
    bench.does("read", 1, surface_c=74.0)
    assert bench.advice["step"] == "pour"


def test_dead_thermometer_does_not_hold_up_hot_caramel():
    bench = in_jacket()
    bench.until("look")
    bench.does("stirred", 1, free=True)
    assert bench.advice["choices"][0]["kind"] == "poured"
    bench.does("step_skipped", 5, step="read")
    assert bench.advice["choices"][0]["kind"] == "poured"


def test_undo_takes_the_block_out_again_and_names_it():
    bench = in_jacket()
    assert bench.advice["undo"]["code"] == "undo.jacket_started"
    bench.does("undone", 5, event_id=bench.advice["undo"]["event_id"])
    assert bench.advice["step"] == "block_in"


@pytest.mark.parametrize(
    ("kind", "body", "why"),
    [
        ("burst_started", {"seconds_s": 60}, "in_a_jacket"),
        ("jacket_started", {"seconds_s": 60, "low_s": 50, "high_s": 70}, "already_in"),
        ("jacket_started", {"seconds_s": 60, "low_s": 0, "high_s": 70}, "too_low"),
    ],
)
def test_event_that_does_not_fit_a_jacket_is_kept_and_changes_nothing(kind, body, why):
    bench = in_jacket()
    before = bench.run
    bench.does(kind, 5, **body)
    assert bench.run["ignored"][-1]["why"] == why
    assert bench.run["melt"] == before["melt"]


@pytest.mark.parametrize("kind", ["jacket_started", "water_topped"])
def test_oven_batch_takes_no_jacket_events(kind):
    bench = Bench()
    bench.sets_up()
    bench.does(kind, 5, seconds_s=60, low_s=50, high_s=70)
    assert bench.run["ignored"][-1]["why"] == "not_in_a_jacket"


def test_water_topped_up_before_the_block_is_in_is_ignored():
    bench = Bench(jacket_slab())
    bench.does("water_topped", 5)
    assert bench.run["ignored"][-1]["why"] == "nothing_in_yet"


# What it teaches --------------------------------------------------------------------------------------------------


def closed() -> Bench:
    bench = in_jacket()
    bench.until("look")
    bench.does("stirred", 1, free=True)
    # A hand that reads and rests as at an oven: were it taken for one, these would make a power.
    for surface_c in (60.0, 66.0, 73.0):
        bench.does("read", 200, surface_c=surface_c)
    bench.taps()
    bench.does("slab_read", 1800, surface_c=45.0)
    bench.does("touched", 7200, firm=True)
    bench.does("counted", 600, pieces=190)
    bench.does("closed", 10)
    return bench


def test_closed_jacket_batch_teaches_the_base_and_no_oven():
    bench = closed()
    plan = bench.plan | {"oven_id": "oven-a", "base_id": "base-a", "product_id": "p"}
    told = catalogue.call("learn.contribution", {"batch_id": "b", "plan": plan, "run": bench.run})["contribution"]
    assert told["oven"] is None
    assert {"part": "oven", "why": "in_a_jacket"} in told["unused"]
    assert told["base"] is not None
    learnt = catalogue.call("learn.fold", {"batches": [told]})
    assert learnt["ovens"] == []
    assert [one["id"] for one in learnt["bases"]] == ["base-a"]


def test_planned_hours_stand_beside_those_it_took():
    bench = closed()
    told = catalogue.call("learn.contribution", {"batch_id": "b", "plan": bench.plan, "run": bench.run})["contribution"]
    row = next(one for one in told["compared"] if one["name"] == "jacket_s")
    jacketed = bench.plan["reply"]["jacket"]
    assert row["planned"] == jacketed["seconds_s"]
    assert row["happened"] > jacketed["low_s"]
    assert "power_w" not in [one["name"] for one in told["compared"]]


def test_measured_oven_power_is_not_put_into_a_jacket_plan():
    oven = {"id": "a", "mass_band": {"low_kg": 1.0, "high_kg": 2.0}, "mass_kg": 1.5, "power_w": 500.0,
            "power_sd_w": 50.0, "power_low_w": 440.0, "power_high_w": 560.0, "n": 3}  # fmt: skip
    measured = {"ovens": [oven], "bases": [], "products": [], "residue": None, "ignored": [], "n": 3}
    asked = {"measured": measured, "request": REQUEST, "oven_id": "a"}
    assert catalogue.call("learn.apply", asked)["used"] == []
    assert catalogue.call("learn.apply", asked | {"request": SLAB_REQUEST})["used"] != []
