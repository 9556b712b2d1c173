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
    for tray in range(trays):
        bench.does("tray_laid", 60, seen=tray)
    return bench


def fill_due_ms(bench: Bench) -> float:
    """When the clock of the fill rings."""
    return next(one["due_ms"] for one in bench.advice["clocks"] if one["name"] == "fill")


def waits_for_the_fill(bench: Bench) -> None:
    """Until a second after its clock has rung."""
    bench.waits((fill_due_ms(bench) - bench.now_ms) / 1000 + 1)


def choice(bench: Bench, code: str) -> dict[str, Any]:
    """One of the further buttons of the page."""
    return next(one for one in bench.advice["choices"] if one["code"] == code)


def kept_in_the_bowl_kg() -> float:
    """What the first fill leaves in the bowl: all but the fill and a fiftieth, which clings to the bowl."""
    first_kg = warm(Bench(planned_clusters())).advice["action"]["body"]["kg"]
    return float(0.98 * planned_clusters()["reply"]["caramel_kg"] - first_kg)


def believed_c(bench: Bench) -> float:
    """How warm the caramel in the funnel is thought to be: the keypad takes up to 12 K more."""
    return choice(bench, "button.read_fill")["entry"]["high"] - 12.0


def test_nothing_is_heated_before_the_allergen_gate():
    bench = Bench(planned_clusters())
    bench.does("ready_checked")
    assert bench.advice["step"] == "allergens"
    assert bench.advice["caution"]["word"] == "WARNING"
    bench.taps()
    assert bench.advice["step"] == "under_lot"


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
    due_ms, thick_ms = fill_due_ms(bench), bench.run["cluster"]["fill"]["thick_ms"]
    bench.does("fill_read", 10, surface_c=bench.run["melt"]["request"]["window_low_c"] - 2.5, seen=0)
    assert bench.advice["step"] == "lay"
    # It runs low before it is thick, so the clock itself need not move.
    assert bench.run["cluster"]["fill"]["thick_ms"] < thick_ms - 10_000
    assert fill_due_ms(bench) <= due_ms


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
    waits_for_the_fill(bench)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("read", "say.stir_read")
    bench.does("read", 10, surface_c=72.0)
    advice = bench.advice
    assert (advice["step"], advice["action"]["kind"]) == ("refill", "filled")
    bench.taps(20)
    assert (bench.advice["step"], bench.advice["clocks"][0]["name"]) == ("lay", "fill")
    assert bench.advice["clocks"][0]["due_ms"] > bench.now_ms


def test_a_funnel_whose_clock_rings_is_read_before_it_is_emptied():
    bench = warm(Bench(planned_clusters()))
    bench.does("filled", 20, kg=1.4, bulk_c=71.0)
    waits_for_the_fill(bench)
    assert bench.advice["step"] == "read_fill"
    bench.does("fill_read", 10, surface_c=72.0, seen=0)
    assert bench.advice["step"] == "lay"
    waits_for_the_fill(bench)
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
        assert (fill_due_ms(bench) - bench.now_ms) / 1000 >= least_s
    assert "short_fills" in [one["code"] for one in reply["warnings"]]


def test_a_fill_that_would_not_outlast_the_second_deposit_is_heated_again_first():
    bench = filled()
    bench.does("tray_laid", 200, seen=0)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("reheat", "say.fill_anew")
    left_kg = bench.advice["action"]["body"]["left_kg"]
    bench.taps(10)
    # All that was in bowl and funnel can be filled anew.
    assert bench.advice["step"] == "burst"
    assert choice(bench, "button.fill_now_cold")["body"]["kg"] == pytest.approx(kept_in_the_bowl_kg() + left_kg)
    bench.melts(until="fill")
    bench.taps(10)
    assert bench.advice["undo"]["code"] == "undo.filled"
    assert "button.read_fill" in [one["code"] for one in bench.advice["choices"]]


def test_a_funnel_empty_before_its_clock_is_filled_from_the_bowl():
    bench = filled()
    empty = choice(bench, "button.funnel_empty")
    bench.does(empty["kind"], 100, **empty["body"])
    assert bench.advice["clocks"] == []
    assert choice(bench, "button.fill_now")["body"]["kg"] == pytest.approx(kept_in_the_bowl_kg())


def test_a_tray_told_says_what_is_left_in_the_funnel():
    bench = warm(Bench(planned_clusters()))
    poured_kg = bench.advice["action"]["body"]["kg"]
    bench.taps(20)
    bench.does("tray_laid", 200, seen=0)
    assert bench.advice["action"]["code"] == "button.fill_back"
    left_kg = bench.advice["action"]["body"]["left_kg"]
    assert poured_kg - left_kg == pytest.approx(planned_clusters()["reply"]["per_tray"] * 0.012)


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


def names_no_lots(bench: Bench) -> None:
    """Says of each thing that lies under that its lot is not known."""
    while bench.advice["step"] == "under_lot":
        bench.taps()


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
    names_no_lots(bench)
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
    assert bench.advice["more"] == {"code": "more.allergens_some", "values": {"allergens": ["peanuts", "wheat"]}}
    bench.does("allergens_checked")
    names_no_lots(bench)
    each = [{"material": "pretzel", "each_n": 3}, {"material": "peanut", "each_n": 2}]
    assert bench.advice["say"] == {"code": "say.under_named", "values": {"each": each}}


def test_gate_sends_to_the_label_where_what_goes_under_has_no_name():
    bench = opened_on(("pecan", 2), ({"water": 0.1, "carbohydrate": 0.9}, 1))
    assert bench.advice["more"] == {"code": "more.allergens_some", "values": {"allergens": ["pecan"]}}
    bench.does("allergens_checked")
    assert bench.advice["say"]["code"] == "say.under_lot_of"
    names_no_lots(bench)
    assert bench.advice["say"] == {"code": "say.under_counted", "values": {}}


def test_trays_are_told_by_one_tap_and_two_hands_count_once():
    bench = filled()
    bench.does("tray_laid", 60, seen=0)
    twin = bench.does("tray_laid", 1, seen=0)
    bench.does("tray_laid", 60, seen=1)
    assert bench.run["ignored"] == [{"id": twin, "why": "already_counted"}]


def test_a_funnel_read_far_too_cool_is_believed_and_one_far_too_warm_is_not():
    bench = filled()
    filled_c = believed_c(bench)
    assert 65.0 < filled_c < 77.7
    bench.does("fill_read", 10, surface_c=filled_c - 15, seen=0)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("reheat", "say.too_thick")
    assert choice(bench, "button.read_fill")["entry"]["last"] == filled_c - 15
    bench = filled()
    due_ms = fill_due_ms(bench)
    bench.does("fill_read", 10, surface_c=filled_c + 11, seen=0)
    # Caramel cannot have grown warmer in the funnel: no more time is given.
    assert (bench.advice["step"], fill_due_ms(bench)) == ("lay", due_ms)


def test_the_second_deposit_is_asked_while_tacky_and_not_before():
    bench = laid()
    window = planned_clusters()["reply"]["second"]
    bench.does("filled", 1, kg=0.5, bulk_c=76.0, seen=1)
    assert bench.advice["step"] == "wait"
    first_ms = filled().advice["clocks"][0]["started_ms"]
    assert bench.advice["number"]["value"] == pytest.approx(first_ms + 1000 * window["from_s"])
    bench.waits((first_ms + 1000 * window["from_s"] - bench.now_ms) / 1000 + 1)
    bench.does("filled", 1, kg=0.5, bulk_c=76.0, seen=2)
    assert bench.advice["step"] == "tacky"
    bench.does("tack_tested", 1, tacky=False, seen=0)
    assert bench.advice["step"] == "wait"
    assert bench.advice["number"]["value"] == pytest.approx(bench.now_ms + 120_000)
    bench.does("tack_tested", 10, tacky=True, seen=1)
    assert (bench.advice["step"], bench.advice["action"]["kind"]) == ("second", "second_laid")


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
    bench = filled()
    first = bench.does("tray_laid", 60, seen=0)
    second = bench.does("tray_laid", 60, seen=1)
    assert bench.advice["undo"]["event_id"] == second
    bench.does("undone", 1, event_id=second)
    assert bench.advice["undo"] == {"event_id": first, "code": "undo.tray_laid"}
    again = bench.does("tray_laid", 60, seen=1)
    assert bench.run["ignored"] == []
    assert bench.advice["undo"]["event_id"] == again


def test_events_of_a_slab_and_of_clusters_do_not_fit_each_other():
    clusters, slab = filled(), Bench(planned_slab())
    slab.sets_up()
    strangers = [clusters.does(kind, 1) for kind in ("poured", "flipped", "cut")]
    strangers += [slab.does("filled", 1, kg=0.5, bulk_c=74.0), slab.does("tray_laid", 1)]
    why = [one["why"] for one in clusters.run["ignored"] + slab.run["ignored"]]
    assert why == ["not_in_this_batch"] * len(strangers)


def taught(bench: Bench) -> dict[str, Any]:
    """What a batch teaches of its oven, closed as it stands."""
    bench.does("closed", 10)
    request = {"batch_id": "b", "plan": bench.plan, "run": bench.run}
    return dict(catalogue.call("learn.contribution", request)["contribution"]["oven"])


def test_the_oven_is_learnt_from_the_first_melt():
    heated_again = filled()
    heated_again.does("tray_laid", 200, seen=0)
    heated_again.taps(10)
    heated_again.melts(until="fill")
    heated_again.taps(10)
    lesson = taught(heated_again)
    assert lesson["mass_kg"] == pytest.approx(planned_clusters()["reply"]["caramel_kg"])
    assert lesson == taught(warm(Bench(planned_clusters())))


def test_plan_that_says_an_old_name_of_its_function_replays_like_any_other():
    bench = warm(Bench(planned_clusters()))
    events = bench.events
    run = catalogue.call("run.replay", {"plan": bench.plan, "events": events})
    old = catalogue.call("run.replay", {"plan": bench.plan | {"function": "deposit.plan"}, "events": events})
    assert old == run
    assert run["run"]["ignored"] == []
