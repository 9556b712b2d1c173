"""Clusters at the bench: gate, fills, one tap a tray, the second deposit while tacky, freeing, the count."""

import copy
import math
from typing import Any

import numpy as np
import pytest

from amberbench.engine import catalogue
from amberbench.engine.steps.deposit import decisions as deposit_decisions
from tests.bench import Bench, planned_clusters, planned_slab
from tests.strategies_deposit import ON_A_BED


def warm(bench: Bench) -> Bench:
    """Weighed in and melted; the funnel may be filled."""
    for kind in ("ready_checked", "allergens_checked", "under_laid"):
        bench.does(kind, 20)
    bench.does("weighed", 60, kg=planned_clusters()["reply"]["caramel_kg"], lot="A-117")
    bench.melts(until="fill")
    return bench


def filled() -> Bench:
    bench = warm(Bench(planned_clusters()))
    bench.taps(20)
    return bench


def laid(trays: int = 2) -> Bench:
    bench = filled()
    for _ in range(trays):
        bench.does("tray_laid", 60, seen=len(bench.run["cluster"]["laid"]))
    return bench


def test_nothing_is_heated_before_the_allergen_gate():
    bench = Bench(planned_clusters())
    bench.does("ready_checked")
    assert bench.advice["step"] == "allergens"
    assert bench.advice["caution"]["word"] == "WARNING"
    bench.taps()
    assert bench.advice["step"] == "under"


def test_a_warm_bowl_asks_for_the_funnel_and_its_clock_runs():
    bench = warm(Bench(planned_clusters()))
    assert bench.advice["step"] == "fill"
    bench.taps(20)
    advice = bench.advice
    assert advice["step"] == "lay"
    assert [clock["name"] for clock in advice["clocks"]] == ["fill"]
    assert 30 < (advice["number"]["value"] - bench.now_ms) / 1000 < 1200


def test_a_cooler_reading_shortens_the_time_until_it_is_thick():
    bench = filled()
    thick_ms = bench.run["cluster"]["fill"]["thick_ms"]
    bench.does("fill_read", 10, surface_c=bench.run["melt"]["request"]["window_low_c"] - 2.5, seen=0)
    assert bench.run["cluster"]["fill"]["thick_ms"] < thick_ms


def test_what_a_fill_may_have_lost_does_not_hang_on_how_often_it_is_told_of():
    """One factor of loss for all of a fill: its part grows with what was lost, and is in quadrature with the rest."""
    state = filled().run["cluster"]
    at_ms, before_sd_k, before_c = state["fill"]["at_ms"], state["fill"]["sd_k"], state["fill"]["now_c"]
    for minutes in (1, 2, 3):
        deposit_decisions.advance_to(state, at_ms + 60_000 * minutes)
    lost_k = before_c - state["fill"]["now_c"]
    assert lost_k > 2
    assert state["fill"]["sd_k"] == pytest.approx(math.hypot(before_sd_k, 0.2 * lost_k))


def test_a_reading_speaks_for_what_a_fill_has_lost_too():
    """Two unknowns and one reading, by matrices: temperature, and the factor of loss that moves with it."""
    bench = filled()
    bench.waits(120)
    state = copy.deepcopy(bench.run["cluster"])
    deposit_decisions.advance_to(state, bench.now_ms + 1000)
    before, bench_at_ms = state["fill"], bench.now_ms
    with_loss = -0.04 * before["lost_k"]
    both = np.array([[before["sd_k"] ** 2, with_loss], [with_loss, 0.04]])
    both -= np.outer(both[0], both[0]) / (both[0, 0] + 4.0)
    bench.does("fill_read", 1, surface_c=72.0, seen=0)
    after = bench.run["cluster"]["fill"]
    assert after["at_ms"] == bench_at_ms + 1000
    assert after["sd_k"] == pytest.approx(math.sqrt(both[0, 0]))
    assert after["lost_k"] == pytest.approx(-both[0, 1] / 0.04)


def test_a_funnel_that_runs_low_is_topped_up_from_a_bowl_that_was_read():
    bench = filled()
    bench.waits((bench.run["cluster"]["fill"]["due_ms"] - bench.now_ms) / 1000 + 1)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("read", "say.stir_read")
    bench.does("read", 10, surface_c=72.0)
    advice = bench.advice
    assert (advice["step"], advice["action"]["kind"]) == ("refill", "filled")
    bowl_kg = bench.run["cluster"]["bowl_kg"]
    bench.taps(20)
    assert bench.run["cluster"]["bowl_kg"] < bowl_kg
    assert bench.run["cluster"]["under_way"] == "lay"


def test_a_funnel_whose_clock_rings_is_read_before_it_is_emptied():
    bench = warm(Bench(planned_clusters()))
    bench.does("filled", 20, kg=1.4, bulk_c=71.0)
    bench.waits((bench.run["cluster"]["fill"]["due_ms"] - bench.now_ms) / 1000 + 1)
    assert bench.advice["step"] == "read_fill"
    bench.does("fill_read", 10, surface_c=72.0, seen=0)
    assert bench.advice["step"] == "lay"
    bench.waits((bench.run["cluster"]["fill"]["due_ms"] - bench.now_ms) / 1000 + 1)
    bench.does("fill_read", 10, surface_c=63.0, seen=1)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("reheat", "say.too_thick")


def test_in_a_window_too_narrow_to_be_sure_a_fill_is_laid_while_it_is_likely_warm_enough():
    """Heated again it would be no surer: it must not go back and forth for ever."""
    request = planned_clusters()["request"] | {"window_low_c": 71.0, "window_high_c": 74.0}
    reply = catalogue.call("cluster.plan", request)
    bench = warm(Bench(planned_clusters() | {"request": request, "reply": reply}))
    for bulk_c, least_s in ((72.0, 20), (80.0, 60)):
        bench.does("filled", 20, kg=1.4, bulk_c=bulk_c)
        assert bench.advice["step"] == "lay"
        assert (bench.run["cluster"]["fill"]["due_ms"] - bench.now_ms) / 1000 >= least_s
    assert "short_fills" in [one["code"] for one in reply["warnings"]]


def test_a_fill_that_would_not_outlast_the_second_deposit_is_heated_again_first():
    bench = filled()
    bench.does("tray_laid", 200, seen=0)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("reheat", "say.fill_anew")
    before_kg = bench.run["cluster"]["bowl_kg"]
    bench.taps(10)
    assert bench.run["cluster"]["fill"] is None
    assert bench.run["cluster"]["bowl_kg"] > before_kg
    bench.melts(until="fill")
    bench.taps(10)
    assert bench.run["cluster"]["fills"] == 2


def test_a_funnel_empty_before_its_clock_is_filled_from_the_bowl():
    bench = filled()
    empty = next(one for one in bench.advice["choices"] if one["code"] == "button.funnel_empty")
    bowl_kg = bench.run["cluster"]["bowl_kg"]
    bench.does(empty["kind"], 100, **empty["body"])
    assert bench.run["cluster"]["fill"] is None
    assert bench.run["cluster"]["bowl_kg"] == bowl_kg


def test_a_tray_told_says_what_is_left_in_the_funnel():
    bench = filled()
    state = bench.run["cluster"]
    all_kg = state["bowl_kg"] + state["fill"]["kg"]
    bench.does("tray_laid", 100, seen=0)
    state = bench.run["cluster"]
    assert state["bowl_kg"] + state["fill"]["kg"] == pytest.approx(
        all_kg - planned_clusters()["reply"]["per_tray"] * 0.012
    )


def said_while_laying(trays: int, *rows: tuple[int, float]) -> dict:
    """What the prompt says when so many trays are laid of clusters of these sizes, once each."""
    wanted = [{"clusters": number, "deposit_kg": kg} for number, kg in rows]
    request = planned_clusters()["request"] | {"second_kg": 0.0, "rows": wanted}
    bench = warm(Bench(planned_clusters() | {"request": request, "reply": catalogue.call("cluster.plan", request)}))
    bench.taps(20)
    for tray in range(trays):
        bench.does("tray_laid", 30, seen=tray)
    return bench.advice["say"]


def test_where_sizes_differ_the_prompt_says_what_goes_on_this_tray():
    rows = (70, 0.012), (20, 0.010)
    for trays, expected in ((0, [(60, 0.012)]), (1, [(10, 0.012), (20, 0.010)])):
        say = said_while_laying(trays, *rows)
        assert say["code"] == "say.lay_sizes"
        assert [(one["clusters"], one["deposit_kg"]) for one in say["values"]["sizes"]] == expected
    assert said_while_laying(0, (70, 0.012))["code"] == "say.lay"


def said_of_the_bed(clusters: int, old: bool = False) -> dict:
    """What the prompt says beside the bed for so many clusters; by a plan of long ago."""
    request = ON_A_BED | {"caramel_kg": None, "deposit_kg": None}
    request["rows"] = [{"clusters": clusters, "deposit_kg": 0.012}]
    reply = catalogue.call("cluster.plan", request)
    if old:
        del reply["bed"]
    bench = Bench(planned_clusters() | {"request": request, "reply": reply})
    for kind in ("ready_checked", "allergens_checked"):
        bench.does(kind, 20)
    assert bench.advice["step"] == "under"
    return bench.advice["more"]


def test_the_prompt_says_how_much_of_a_bed_goes_on_each_tray():
    whole_kg = 0.43 * 0.30 * 5.0
    last = said_of_the_bed(70)
    assert last["code"] == "more.under_bed_last"
    assert last["values"]["last_kg"] < last["values"]["tray_kg"] == pytest.approx(whole_kg)
    alike = said_of_the_bed(120)
    assert (alike["code"], alike["values"]["tray_kg"]) == ("more.under_bed", pytest.approx(whole_kg))
    assert said_of_the_bed(70, old=True)["code"] == "more.under_bed"


def opened_on(*under: tuple[str | dict[str, Any], int]) -> Bench:
    """A bench that has clusters of a plan with so many pieces of each kind under them, all ready."""
    plan = copy.deepcopy(planned_clusters())
    wanted = [{"material": material, "kg_each": 0.0016, "count": count} for material, count in under]
    plan["reply"] = catalogue.call("cluster.plan", plan["request"] | {"under": wanted})
    bench = Bench(plan)
    bench.does("ready_checked")
    return bench


def test_gate_and_prompt_name_what_goes_under_each():
    bench = opened_on(("pretzel", 3), ("peanut", 2))
    assert bench.advice["more"] == {"code": "more.allergens", "values": {"allergens": ["peanuts", "gluten"]}}
    bench.does("allergens_checked")
    each = [{"material": "pretzel", "each_n": 3}, {"material": "peanut", "each_n": 2}]
    assert bench.advice["say"] == {"code": "say.under_named", "values": {"each": each}}


def test_gate_sends_to_the_label_where_what_goes_under_has_no_name():
    bench = opened_on(("pecan", 2), ({"water": 0.1, "carbohydrate": 0.9}, 1))
    assert bench.advice["more"] == {"code": "more.allergens_on_label", "values": {}}
    bench.does("allergens_checked")
    assert bench.advice["say"] == {"code": "say.under_counted", "values": {}}


def test_trays_are_told_by_one_tap_and_two_hands_count_once():
    bench = filled()
    bench.does("tray_laid", 60, seen=0)
    twin = bench.does("tray_laid", 1, seen=0)
    assert len(bench.run["cluster"]["laid"]) == 1
    assert bench.run["ignored"] == [{"id": twin, "why": "already_counted"}]


def test_a_funnel_read_far_too_cool_is_believed_and_one_far_too_warm_is_not():
    bench = filled()
    filled_c = bench.run["cluster"]["fill"]["now_c"]
    entry = next(one["entry"] for one in bench.advice["choices"] if one["code"] == "button.read_fill")
    assert entry["high"] == pytest.approx(filled_c + 12)
    bench.does("fill_read", 10, surface_c=filled_c - 15, seen=0)
    assert bench.run["cluster"]["fill"]["now_c"] == pytest.approx(filled_c - 15, abs=0.5)
    assert bench.advice["step"] != "lay"
    bench = filled()
    bench.does("fill_read", 10, surface_c=filled_c + 11, seen=0)
    assert bench.run["cluster"]["fill"]["now_c"] < filled_c + 4


def test_the_second_deposit_is_asked_while_tacky_and_not_before():
    bench = laid()
    window = planned_clusters()["reply"]["second"]
    bench.does("filled", 1, kg=0.5, bulk_c=76.0, seen=1)
    assert bench.advice["step"] == "wait"
    first_ms = bench.run["cluster"]["laid"][0]["began_ms"]
    assert bench.advice["number"]["value"] == pytest.approx(first_ms + 1000 * window["from_s"])
    bench.waits((first_ms + 1000 * window["from_s"] - bench.now_ms) / 1000 + 1)
    bench.does("filled", 1, kg=0.5, bulk_c=76.0, seen=2)
    assert bench.advice["step"] == "tacky"
    bench.does("tack_tested", 1, tacky=False, seen=0)
    assert bench.advice["step"] == "wait"
    assert bench.advice["number"]["value"] == pytest.approx(bench.now_ms + 120_000)
    bench.does("tack_tested", 10, tacky=True, seen=1)
    assert bench.run["cluster"]["tack"] > 1


def test_a_tray_that_went_cold_is_said_to():
    bench = laid()
    bench.does("tack_tested", 200, tacky=True, seen=0)
    bench.waits(planned_clusters()["reply"]["second"]["to_s"])
    bench.does("filled", 1, kg=0.5, bulk_c=76.0, seen=1)
    assert bench.advice["say"]["code"] == "say.second_cold"


def test_a_second_deposit_before_the_first_does_not_fit():
    bench = filled()
    early = bench.does("second_laid", 5, seen=0)
    assert bench.run["ignored"] == [{"id": early, "why": "not_laid_yet"}]


def test_when_all_is_laid_the_funnel_is_emptied_and_trays_are_freed_one_by_one():
    bench = laid()
    for tray in range(2):
        bench.does("second_laid", 100, seen=tray)
    assert bench.advice["step"] == "empty"
    bench.taps()
    assert bench.advice["step"] == "cool_tray"
    assert bench.advice["choices"] == []
    bench.waits(planned_clusters()["reply"]["free"]["from_s"])
    assert bench.advice["step"] == "release"
    bench.does("tray_freed", 5, free=False, seen=0)
    assert bench.advice["number"]["value"] == bench.now_ms + 600_000
    bench.does("tray_freed", 600, free=True, seen=1)
    bench.does("tray_freed", 60, free=True, seen=2)
    assert bench.advice["step"] == "separate"
    bench.does("weighed_out", 10, kg=0.05, what="loose", seen=0)
    bench.does("separated", 10)
    bench.does("counted", 10, pieces=78)
    bench.does("weighed_out", 10, kg=0.02, what="rest", seen=1)
    bench.does("closed", 10)
    assert bench.run["ignored"] == []
    assert (bench.run["pieces"], bench.advice["step"]) == (78, "closed")


def test_undo_takes_the_last_tray_back():
    bench = laid()
    bench.does("undone", 1, event_id=bench.advice["undo"]["event_id"])
    assert len(bench.run["cluster"]["laid"]) == 1


def test_events_of_a_slab_and_of_clusters_do_not_fit_each_other():
    clusters, slab = filled(), Bench(planned_slab())
    slab.sets_up()
    strangers = [clusters.does(kind, 1) for kind in ("poured", "flipped", "cut")]
    strangers += [slab.does("filled", 1, kg=0.5, bulk_c=74.0), slab.does("tray_laid", 1)]
    why = [one["why"] for one in clusters.run["ignored"] + slab.run["ignored"]]
    assert why == ["not_in_this_batch"] * len(strangers)


def test_the_oven_is_learnt_from_the_first_melt():
    bench = filled()
    told = bench.run["cluster"]["melted"]
    assert [one["kind"] for one in told["history"]].count("burst") >= 2
    assert told["request"]["mass_kg"] == pytest.approx(planned_clusters()["reply"]["caramel_kg"])
    assert bench.run["melt"]["request"]["mass_kg"] < told["request"]["mass_kg"]


def test_plan_that_says_an_old_name_of_its_function_replays_like_any_other():
    bench = warm(Bench(planned_clusters()))
    events = bench.events
    run = catalogue.call("run.replay", {"plan": bench.plan, "events": events})
    old = catalogue.call("run.replay", {"plan": bench.plan | {"function": "deposit.plan"}, "events": events})
    assert old == run
    assert run["run"]["ignored"] == []
