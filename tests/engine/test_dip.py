"""Pieces that are dipped: what it takes, and the steps between cutting and counting."""

import math
from typing import Any

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests.bench import SLAB_REQUEST, Bench, dipped_slab, planned_slab, tells_once, with_dip
from tests.strategies_deposit import ON_NUTS

DIP = dipped_slab()["request"]["dip"]


def planned(**dip: Any) -> dict[str, Any]:
    return catalogue.call("slab.plan", SLAB_REQUEST | {"dip": DIP | dip})


def at(step: str, plan: dict[str, Any] | None = None) -> Bench:
    """A bench whose dipped slab is at a step: cut, rested, strip good, dipped."""
    bench = at_the_cut(plan or dipped_slab())
    for name, act in (
        ("temper_check", lambda: bench.waits(15 * 60)),
        ("dip", lambda: bench.taps(60)),
        ("set", lambda: bench.does("dipped", 3000)),
        ("count", lambda: bench.does("set_hard", 2400)),
    ):
        act()
        assert bench.advice["step"] == name
        if name == step:
            return bench
    raise AssertionError(step)


def clocks(bench: Bench) -> list[tuple[str, float]]:
    return [(clock["name"], clock["due_ms"] - bench.now_ms) for clock in bench.advice["clocks"]]


# The pre-bottom ---------------------------------------------------------------------------------------------------


def ready_to_coat() -> Bench:
    """A firm slab, loosened, that gets a pre-bottom."""
    bench = Bench(planned_slab() | {"prebottom": True})
    bench.sets_up()
    bench.does("poured", 1800)
    bench.does("touched", 7200, firm=True)
    bench.taps()
    assert bench.advice["step"] == "prebottom"
    return bench


def test_slab_is_flipped_once_its_pre_bottom_has_set():
    """Five to ten minutes (common practice, no published source), looked at at the early end."""
    bench = ready_to_coat()
    bench.taps()
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("flip", "say.prebottom_sets")
    assert [name for name, _ in clocks(bench)] == ["prebottom"]
    bench.waits(5 * 60)
    assert bench.advice["say"]["code"] == "say.flip"
    bench.taps()
    assert clocks(bench) == []


def test_slab_whose_pre_bottom_was_skipped_is_flipped_at_once():
    bench = ready_to_coat()
    bench.does("step_skipped", step="prebottom")
    assert (bench.advice["say"]["code"], clocks(bench)) == ("say.flip", [])


# The plan ---------------------------------------------------------------------------------------------------------


def test_plan_says_what_coating_and_salting_say_of_its_pieces():
    reply = planned(prebottom_m=0.0005)
    cut, dip = reply["cut"], reply["dip"]
    piece = {"length_m": 0.024, "width_m": 0.024, "height_m": reply["pour"]["settled_height_m"]}
    alone = catalogue.call("chocolate.coating", {
        "piece": piece, "centre_kg": cut["piece_kg"], "pieces": cut["pieces"], "prebottom_m": 0.0005,
        "prebottom_m2": reply["pour"]["area_m2"], "pocket_m": DIP["pocket_m"],
    })  # fmt: skip
    for name in (
        "per_piece_kg",
        "share",
        "piece_kg",
        "prebottom_kg",
        "coating_kg",
        "total_kg",
        "outside_m",
        "warnings",
    ):
        assert dip[name] == alone[name], name
    salting = {"dip_s": 20, "salt_each_kg": DIP["salt_each_kg"], "pieces": cut["pieces"]}
    salted = catalogue.call("chocolate.salting", salting)
    assert (
        (dip["every"], dip["salt_kg"])
        == (salted["every"], salted["salt_kg"])
        == (4, pytest.approx(cut["pieces"] * 1e-4))
    )


def test_plan_of_dipped_pieces_is_else_that_of_plain_ones():
    plain, reply = planned_slab()["reply"], planned()
    assert plain["dip"] is None
    assert reply["dip"]["warnings"] == []
    for name in ("caramel_kg", "pour", "cut", "melt", "cool", "warnings"):
        assert reply[name] == plain[name]


def test_dipping_longer_than_the_bowl_stays_in_temper_says_how_often_it_is_warmed():
    """As reckoned apart: some 88 pieces at 20 s are 29 minutes; the full bowl of 0.9 kg holds some seven."""
    reply = planned()
    pieces, dip = reply["cut"]["pieces"], reply["dip"]
    assert dip["dip_all_s"] == pytest.approx(pieces * 22)
    hold = {
        "chocolate": "dark_chocolate",
        "mass_kg": dip["total_kg"],
        "now_c": 32,
        "room_c": reply["melt_request"]["room_c"],
    }
    assert dip["holds_s"] == pytest.approx(catalogue.call("chocolate.hold", hold)["seconds_s"])
    least = dip["dip_all_s"] / dip["holds_s"] - 1
    assert least <= dip["rewarms"] <= 2 * least + 2


@pytest.mark.parametrize("dip", [{"method": "enrober_with_bottomer"}, {"dip_s": 0.5, "salt_each_kg": None}])
def test_bowl_that_keeps_its_heat_or_is_emptied_at_once_needs_no_warming(dip):
    assert planned(**dip)["dip"]["rewarms"] == 0


def test_slower_hand_never_warms_the_bowl_less_often():
    times = [planned(dip_s=dip_s)["dip"]["rewarms"] for dip_s in (2, 5, 10, 20, 40, 80, 160)]
    assert times == sorted(times)
    assert times[-1] > times[0]


def test_wider_bowl_wants_more_chocolate_for_the_last_piece():
    """By hand: 16 cm across and as deep as the finished piece is high, of 1300 kg/m³."""
    dip = planned(bowl_width_m=0.16)["dip"]
    assert dip["depth_m"] == dip["outside_m"]["height_m"]
    assert dip["reserve_kg"] == pytest.approx(max(0.3, math.pi / 4 * 0.16**2 * dip["depth_m"] * 1300), rel=0.03)
    wide = planned(bowl_width_m=0.22)["dip"]
    assert wide["reserve_kg"] == pytest.approx(math.pi / 4 * 0.22**2 * dip["depth_m"] * 1300, rel=0.03)
    assert wide["total_kg"] > dip["total_kg"]
    assert planned(bowl_width_m=0.08)["dip"]["reserve_kg"] == 0.3


def test_piece_larger_than_the_pocket_of_its_box_is_told():
    pocket = {"length_m": 0.025, "width_m": 0.03, "height_m": 0.02}
    assert "larger_than_pocket" in [one["code"] for one in planned(pocket_m=pocket)["warnings"]]


def test_what_dipping_rests_on_is_named_with_the_plan_s_other_figures():
    rows = {row["field"]: row for row in planned()["inputs"]}
    assert rows["dip.dip_s"]["measure_by"] == "dip_timed"
    assert rows["coating.thickness_m"]["basis"] == "assumed"
    assert rows["dip.salt_each_kg"]["basis"] == "typed"


@pytest.mark.parametrize(
    ("dip", "field", "code"),
    [
        ({"salt_each_kg": 0}, "dip.salt_each_kg", "too_low"),
        ({"salt_each_kg": 0.1}, "dip.salt_each_kg", "too_high"),
        ({"dip_s": -1}, "dip.dip_s", "too_low"),
        ({"bowl_reserve_kg": -0.1}, "dip.bowl_reserve_kg", "too_low"),
        ({"thickness_m": {"bottom": 0, "side": 0, "top": 0}}, "dip.thickness_m", "no_coating"),
        ({"thickness_m": {"bottom": -0.001, "side": 0, "top": 0}}, "dip.thickness_m.bottom", "too_low"),
        ({"chocolate": "caramel"}, "dip.chocolate", "not_an_option"),
        ({"pieces": 12}, "dip.pieces", "unknown_field"),
    ],
)
def test_dipping_that_makes_no_sense_is_refused_by_its_name(dip, field, code):
    with pytest.raises(Problem) as caught:
        planned(**dip)
    assert (caught.value.field, caught.value.code) == (field, code)


def clusters(**dip: Any) -> dict[str, Any]:
    return catalogue.call("cluster.plan", ON_NUTS | {"dip": dip})


def test_clusters_are_coated_by_their_weighed_pick_up():
    reply = clusters(pickup=0.5, salt_each_kg=0.0002)
    dip = reply["dip"]
    assert dip["per_piece_kg"] == pytest.approx(0.5 * reply["piece_kg"])
    assert dip["share"] == pytest.approx(1 / 3)
    assert dip["total_kg"] == pytest.approx(0.5 * 1.05 * reply["piece_kg"] * 80 + 0.3)
    assert (dip["outside_m"], dip["salt_kg"]) == (None, pytest.approx(80 * 0.0002))
    assert catalogue.call("cluster.plan", ON_NUTS)["dip"] is None


def test_pre_bottom_of_clusters_goes_under_their_spread():
    dip = clusters(pickup=0.5, prebottom_m=0.001)["dip"]
    assert dip["prebottom_kg"] == pytest.approx(80 * math.pi / 4 * 0.04**2 * 0.001 * 1300, rel=0.03)


@pytest.mark.parametrize(
    ("dip", "field", "code"),
    [
        ({}, "dip.pickup", "coating_without_size"),
        ({"pickup": -0.5}, "dip.pickup", "too_low"),
        ({"pickup": 0.5, "salt_each_kg": 0.1}, "dip.salt_each_kg", "too_high"),
    ],
)
def test_dipping_of_clusters_that_makes_no_sense_is_refused_by_its_name(dip, field, code):
    with pytest.raises(Problem) as caught:
        clusters(**dip)
    assert (caught.value.field, caught.value.code) == (field, code)


# The bench --------------------------------------------------------------------------------------------------------


def test_plain_slab_is_counted_after_the_cut_and_knows_no_dipping():
    bench = at_the_cut(planned_slab())
    assert (bench.advice["step"], clocks(bench)[0][0]) == ("count", "centres")
    told = [
        bench.does(kind, 5, good=True) for kind in ("strip_tested", "dipping_started", "salted", "dipped", "set_hard")
    ]
    assert bench.run["ignored"] == [{"id": one, "why": "not_in_this_batch"} for one in told]


def test_dipping_remembers_the_bowls_that_were_in_use():
    bowls = [{"name": "Dark chocolate", "lot": "55"}, {"name": "White chocolate", "lot": None}]
    bench = at("dip")
    bench.does("dipping_started", bowls=bowls)
    assert bench.run["dip"]["bowls"] == bowls
    bench = at("dip")
    bench.does("dipping_started")
    assert bench.run["dip"]["bowls"] == []


def at_the_cut(plan: dict[str, Any]) -> Bench:
    bench = Bench(plan)
    bench.sets_up()
    bench.does("poured", 1800)
    bench.does("touched", 7200, firm=True)
    bench.does("cut", 1800)
    return bench


def test_batch_planned_before_there_was_dipping_folds_as_ever():
    plan = planned_slab()
    reply = {name: value for name, value in plan["reply"].items() if name != "dip"}
    assert at_the_cut(plan | {"reply": reply}).run == at_the_cut(plan).run


def test_centres_rest_before_they_are_dipped():
    bench = at_the_cut(dipped_slab())
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("temper_check", "say.centres_rest")
    assert clocks(bench) == [("centres", 15 * 60_000.0)]
    bench.waits(15 * 60)
    assert bench.advice["say"]["code"] == "say.temper_check"


def test_streaky_strip_says_so_until_another_is_good():
    bench = at("temper_check")
    bench.does("strip_tested", 60, good=False, seen=0)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("temper_check", "say.strip_again")
    bench.taps(200)
    assert bench.advice["step"] == "dip"


def test_salt_goes_on_every_so_many_pieces_with_a_clock():
    bench = at("dip")
    assert (bench.advice["more"]["code"], clocks(bench)) == ("more.salt_every", [])
    bench.taps()
    assert clocks(bench) == [("salt", 4 * 20_000.0)]
    assert bench.advice["say"]["code"] == "say.dip"
    bench.waits(81)
    assert (bench.advice["step"], bench.advice["say"]["code"]) == ("salt", "say.salt")
    bench.taps()
    assert (bench.advice["step"], clocks(bench)) == ("dip", [("salt", 4 * 20_000.0)])


@pytest.mark.parametrize(
    ("dip", "name"),
    [
        ({"top_mark": True}, "mark_salt"),
        ({"top_mark": True, "salt_each_kg": None}, "mark"),
        ({"salt_each_kg": None}, None),
        ({"dip_s": 100}, None),
    ],
)
def test_clock_is_of_what_goes_on_top_and_none_for_a_slow_hand(dip, name):
    bench = at("dip", with_dip(**dip))
    bench.taps()
    assert [clock for clock, _ in clocks(bench)] == ([name] if name else [])
    assert bench.advice["action"]["kind"] == ("salted" if name else "dipped")


def test_dipped_pieces_are_left_to_set_and_then_counted():
    bench = at("set")
    assert (bench.advice["say"]["code"], clocks(bench)) == ("say.set", [("set", 30 * 60_000.0)])
    bench.waits(1801)
    assert bench.advice["say"]["code"] == "say.set_hard"
    bench.taps()
    assert (bench.advice["step"], clocks(bench)) == ("count", [])


def test_dipping_may_be_skipped():
    bench = at("dip")
    bench.does("step_skipped", 5, step="dip")
    bench.does("step_skipped", 5, step="set")
    assert bench.advice["step"] == "count"


@pytest.mark.parametrize(("step", "kind", "body"), [
    ("temper_check", "strip_tested", {"good": False, "seen": 0}),
    ("temper_check", "strip_tested", {"good": True, "seen": 0}),
    ("dip", "dipping_started", {}), ("dip", "salted", {"seen": 0}), ("dip", "dipped", {}), ("set", "set_hard", {}),
])  # fmt: skip
def test_two_hands_tell_of_one_step_once(step, kind, body):
    tells_once(at(step), at(step), kind, body)


def test_undo_takes_back_the_last_salting():
    bench = at("dip")
    bench.taps()
    bench.taps(120)
    bench.does("undone", 5, event_id=bench.advice["undo"]["event_id"])
    assert bench.run["dip"]["salted"] == 0


def test_dipped_clusters_go_through_the_same_steps():
    request = ON_NUTS | {"dip": {"pickup": 0.5, "salt_each_kg": 0.0002}}
    reply = catalogue.call("cluster.plan", request)
    bench = Bench({"kind": "cluster", "name": "Nut clusters", "finish": "dipped", "request": request, "reply": reply})
    for kind in ("funnel_emptied", "tray_freed", "separated"):
        bench.does(kind, 600)
    assert bench.advice["step"] == "temper_check"
    bench.taps(120)
    assert bench.advice["step"] == "dip"
    bench.taps()
    assert clocks(bench) == [("salt", 4 * 20_000.0)]
    bench.does("dipped", 900)
    assert bench.advice["step"] == "set"
    bench.taps(1900)
    assert bench.advice["step"] == "count"
