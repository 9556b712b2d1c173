"""What a plan of the cooling promises: limits, order, ranges, warnings, problems."""

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.core.sources import SOURCES
from amberbench.engine.physics.fields import BASE_NAMES
from amberbench.engine.steps.cool.chill_fields import as_told_s

THICKNESS_M = 0.0127
HOUR_S = 3600.0


def plan(**changes):
    return catalogue.call("cool.plan", {"thickness_m": THICKNESS_M} | changes)


def milestones(reply):
    return {one["name"]: one["at_s"] for one in reply["milestones"]}


def problem(**changes):
    with pytest.raises(Problem) as caught:
        plan(**changes)
    return caught.value


# Common practice, no published source ------------------------------------------------------------------------------


@pytest.mark.parametrize("room_c", [18.0, 20.0, 22.0])
@pytest.mark.parametrize("thickness_m", [0.012, THICKNESS_M])
@pytest.mark.parametrize("base", ["marble", "steel_sheet", "wood_board"])
def test_common_practice_half_an_inch_is_ready_in_one_to_two_hours(room_c, thickness_m, base):
    reply = plan(base=base, room_c=room_c, thickness_m=thickness_m)
    assert 1.0 * HOUR_S < reply["ready_s"] < 2.05 * HOUR_S


def test_common_practice_a_warm_room_takes_longer():
    times = [plan(base="wood_board", room_c=room_c)["ready_s"] for room_c in (18.0, 20.0, 22.0, 23.0)]
    assert times == sorted(times)
    assert times[-1] > 1.4 * times[0]


def test_common_practice_a_tray_is_tacky_and_firm_within_two_hours():
    reply = milestones(plan(base="aluminium_tray"))
    assert reply["tacky"] < reply["firm"] < 2.0 * HOUR_S


# Shape of the answer -----------------------------------------------------------------------------------------------


def test_milestones_come_in_order_and_inside_their_ranges():
    reply = plan(room_c=15.0)
    assert [one["name"] for one in reply["milestones"]] == ["skin", "tacky", "firm", "free", "ready", "cold"]
    for one in reply["milestones"]:
        assert one["low_s"] < one["at_s"] < one["high_s"]
    ready = reply["milestones"][4]
    assert [reply[key] for key in ("ready_low_s", "ready_s", "ready_high_s")] == [
        ready[key] for key in ("low_s", "at_s", "high_s")
    ]


def test_a_slab_never_gets_too_cold_to_cut_in_an_ordinary_room():
    assert "cold" not in milestones(plan(room_c=21.0))


def test_a_milestone_already_passed_at_pouring_is_at_once():
    reply = plan(start_c=50.0)
    assert reply["milestones"][0] == {"name": "skin", "at_s": 0.0, "low_s": 0.0, "high_s": 0.0}


def test_curve_starts_at_pouring_and_falls():
    curve = plan(base="wood_board")["curve"]
    assert curve[0] == {"at_s": 0.0, "core_c": 74.0, "surface_c": 74.0}
    for before, after in itertools.pairwise(curve):
        assert before["at_s"] < after["at_s"]
        assert before["core_c"] >= after["core_c"] - 1e-9
        assert after["core_c"] > after["surface_c"] > 21.0


def test_every_constant_has_a_source_and_a_unit():
    rows = plan(top="fan")["inputs"]
    names = [row["field"] for row in rows]
    assert len(names) == len(set(names))
    for wanted in ("cool.firm_c", "cool.base_thickness_m", "cool.fan_w_m2k", "cool.contact_sd", "loss_factor"):
        assert wanted in names
    for row in rows:
        assert row["source"] is None or row["source"] in SOURCES
        assert row["unit"] or not row["field"].endswith(("_c", "_m", "_s", "_k", "_w_m2k"))


# Rooms -------------------------------------------------------------------------------------------------------------


def test_ready_to_cut_is_one_temperature_in_every_room():
    for room_c in (10.0, 22.0, 26.0, 28.0, 40.0):
        reply = plan(room_c=room_c)
        assert reply["target_c"] == 27.0
        assert max(one["core_c"] for one in reply["curve"] if one["at_s"] >= reply["ready_s"]) <= 27.01


def test_room_that_does_not_make_it_ready_says_how_long_the_bench_helps_and_the_chill():
    assert plan(room_c=26.0)["chill"] is None
    reply = plan(room_c=28.0)
    chill = reply["chill"]
    assert (chill["from_c"], chill["fridge_c"]) == (29.0, 5.0)
    assert reply["ready_s"] == pytest.approx(chill["bench_s"] + chill["seconds_s"])
    warm, wrapped, sooner = reply["warnings"]
    assert warm == {
        "code": "not_on_this_bench",
        "values": {"room_c": 28.0, "target_c": 27.0, "bench_s": chill["bench_s"]},
    }
    assert wrapped == {"code": "chill_wrapped", "values": {"chill_s": as_told_s(chill["seconds_s"]), "fridge_c": 5.0}}
    assert sooner["code"] == "chill_sooner"
    assert sooner["values"]["bench_s"] == milestones(reply)["firm"] < 0.2 * chill["bench_s"]
    assert sooner["values"]["chill_s"] > 5.0 * chill["seconds_s"]


def test_in_a_hot_room_milestones_keep_their_order():
    assert list(milestones(plan(room_c=40.0))) == ["skin", "tacky", "firm", "free", "ready"]


def test_a_cold_room_warns():
    assert plan(room_c=17.0)["warnings"] == [{"code": "cold_room", "values": {"room_c": 17.0}}]
    assert plan(room_c=18.0)["warnings"] == []


# What makes it faster or slower ------------------------------------------------------------------------------------


@given(
    thickness_m=st.floats(0.004, 0.03),
    base=st.sampled_from(BASE_NAMES),
    room_c=st.floats(16.0, 22.0),
    start_c=st.floats(60.0, 85.0),
)
def test_thicker_hotter_and_better_wrapped_take_longer(thickness_m, base, room_c, start_c):
    usual = {"thickness_m": thickness_m, "base": base, "room_c": room_c, "start_c": start_c}
    ready_s = plan(**usual)["ready_s"]
    assert plan(**usual | {"thickness_m": thickness_m * 1.1})["ready_s"] > ready_s
    assert plan(**usual | {"start_c": start_c + 3.0})["ready_s"] > ready_s
    assert plan(**usual | {"loss_factor": 0.8})["ready_s"] > ready_s
    assert plan(**usual | {"bottom": "insulated"})["ready_s"] > ready_s
    assert plan(**usual | {"target_c": 29.0})["ready_s"] < ready_s
    assert plan(**usual | {"top": "fan"})["ready_s"] < ready_s
    assert plan(**usual | {"base_start_c": room_c - 5.0})["ready_s"] < ready_s


def test_loss_factor_scales_given_coefficients():
    usual = {"top": {"h_w_m2k": 10.0}, "bottom": "insulated", "base": None}
    assert plan(**usual, loss_factor=1.3)["ready_s"] == pytest.approx(
        plan(**usual | {"top": {"h_w_m2k": 13.0}})["ready_s"], rel=1e-12
    )


def test_without_a_base_both_faces_alike_cool_as_half_the_slab_on_insulation():
    face = {"h_w_m2k": 10.0}
    both = plan(thickness_m=0.0254, top=face, bottom=face, base=None)
    half = plan(thickness_m=0.0127, top=face, bottom="insulated", base=None)
    assert both["ready_s"] == pytest.approx(half["ready_s"], rel=0.002)


def test_a_thin_perfect_base_with_no_contact_is_no_base():
    foil = {"thickness_m": 0.0001, "conductivity_w_mk": 500, "density_kg_m3": 1, "heat_capacity_j_kgk": 100}
    usual = {"bottom": {"h_w_m2k": 5.0}, "contact_m2k_w": 0.0}
    with_foil = plan(**usual, base={"layers": [foil]})
    assert with_foil["ready_s"] == pytest.approx(plan(**usual, base=None)["ready_s"], rel=1e-3)


def test_a_wider_stone_cools_sooner():
    stone = {"thickness_m": 0.02, "conductivity_w_mk": 3.5, "density_kg_m3": 2800, "heat_capacity_j_kgk": 1000}
    narrow, wide = (plan(base={"layers": [stone], "area_ratio": ratio}) for ratio in (1.0, 2.0))
    assert wide["ready_s"] < 0.9 * narrow["ready_s"]


def test_range_widens_with_what_is_not_known():
    sure, unsure = plan(loss_factor_sd=0.05), plan(loss_factor_sd=0.4)
    assert sure["ready_s"] == unsure["ready_s"]
    assert unsure["ready_low_s"] < sure["ready_low_s"] < sure["ready_s"] < sure["ready_high_s"] < unsure["ready_high_s"]


# Problems ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"start_c": 24.0}, "start_c", "start_below_target"),
        ({"start_c": 30.0, "target_c": 40.0}, "start_c", "start_below_target"),
        ({"start_c": 40.0, "room_c": 42.0}, "start_c", "start_below_target"),
        ({"thickness_m": 0.0}, "thickness_m", "too_low"),
        ({"thickness_m": float("nan")}, "thickness_m", "not_finite"),
        ({"thickness_m": True}, "thickness_m", "not_a_number"),
        ({"base": "wool"}, "base", "not_an_option"),
        ({"base": {"layers": []}}, "base.layers", "too_few"),
        ({"top": "insulated"}, "top", "not_an_option"),
        ({"top": {"h_w_m2k": -1}}, "top.h_w_m2k", "too_low"),
        ({"material": {"water": 0.5}}, "material", "composition_sum"),
        ({"colour": 1}, "colour", "unknown_field"),
        ({"base": None, "bottom": "insulated", "top": {"h_w_m2k": 0}}, "target_c", "cools_too_slowly"),
    ],
)
def test_a_request_that_makes_no_sense_is_a_problem(changes, field, code):
    found = problem(**changes)
    assert (found.field, found.code) == (field, code)


@pytest.mark.parametrize(("seconds_s", "told_s"), [(0, 300), (119, 300), (300, 300), (301, 360), (1794.6, 1800)])
def test_a_chill_is_told_in_whole_minutes_and_of_five_at_least(seconds_s, told_s):
    assert as_told_s(seconds_s) == told_s


def test_a_room_that_nearly_makes_it_ready_asks_for_no_chill_of_a_minute():
    reply = plan(room_c=26.05)
    assert reply["chill"]["seconds_s"] < 120.0
    assert [one["values"]["chill_s"] for one in reply["warnings"] if one["code"] == "chill_wrapped"] == [300.0]
