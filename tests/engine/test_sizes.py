"""Things have sizes: bars a length, a bowl a volume; what is more than one takes becomes several batches."""

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.physics import materials
from tests.strategies_deposit import ON_NUTS

IN, LB = 0.0254, 0.45359237
INCH_SQUARES = {
    "slab_height_m": 0.5 * IN, "piece_length_m": IN, "piece_width_m": IN, "trim_m": 0.005, "oven": {"rated_w": 1000},
    "max_length_m": 1.0, "max_width_m": 0.6,
}  # fmt: skip
BARS = [{"height_m": 0.5 * IN, "length_m": 18 * IN, "count": 4}]
FOUR_LITRES = 0.004


def slab(**request):
    return catalogue.call("slab.plan", INCH_SQUARES | request)


def clusters(**request):
    return catalogue.call("cluster.plan", ON_NUTS | request)


def groups(reply):
    return [(one["count"], one["pieces"]) for one in reply["batches"]]


def codes(reply):
    return [one["code"] for one in reply["warnings"]]


# Bars ---------------------------------------------------------------------------------------------------------------


def test_frame_is_made_from_the_bars_the_shop_owns():
    unheld, held = slab(have={"kg": 4.5}), slab(have={"kg": 4.5}, bars=BARS)
    assert max(unheld["pour"]["length_m"], unheld["pour"]["width_m"]) > 18 * IN
    # A bar's end butts against the next: inside is a bar less its width.
    assert max(held["pour"]["length_m"], held["pour"]["width_m"]) <= 17.5 * IN + 1e-9
    assert held["pour"]["bars"] == [0.5 * IN]
    assert all(one["length_m"] <= 17.5 * IN + 1e-9 for one in slab(want={"pieces": 90}, bars=BARS)["frames"])


def test_two_long_and_two_short_bars_close_a_frame():
    bars = [{"height_m": 0.0127, "length_m": 0.5, "count": 2}, {"height_m": 0.0127, "length_m": 0.2, "count": 2}]
    pour = slab(want={"pieces": 60}, bars=bars)["pour"]
    assert pour["width_m"] <= 0.2 - 0.0127 + 1e-9 < pour["length_m"] <= 0.5 - 0.0127 + 1e-9
    assert slab(have={"kg": 1.0}, bars=bars[:1])["pour"]["bars"] == []


def test_stack_is_no_longer_than_its_shortest_bars():
    bars = [{"height_m": 0.006, "length_m": 0.25, "count": 4}, {"height_m": 0.007, "length_m": 0.6, "count": 4}]
    reply = slab(have={"kg": 0.6}, slab_height_m=0.013, bars=bars)
    assert reply["pour"]["bars"] == [0.007, 0.006]
    assert max(reply["pour"]["length_m"], reply["pour"]["width_m"]) <= 0.244 + 1e-9


SHORT_OR_STACKED = [
    {"height_m": 0.0127, "length_m": 0.15, "count": 4},
    {"height_m": 0.00635, "length_m": 0.45, "count": 8},
]


def test_stack_as_high_of_longer_bars_is_taken_where_short_ones_close_too_little():
    """It was chosen by height alone: 1.8 kg became six slabs between six-inch bars beside bars of 18 in."""
    reply = slab(have={"kg": 1.8}, slab_height_m=0.0127, bars=SHORT_OR_STACKED)
    assert reply["pour"]["bars"] == [0.00635, 0.00635]
    assert reply["together"]["batches"] == 1
    given = slab(have={"kg": 1.8}, slab_height_m=0.0127, bars=SHORT_OR_STACKED, frame={"length_m": 0.4, "width_m": 0.3})
    assert given["pour"]["bars"] == [0.00635, 0.00635]
    assert "frame_outruns_bars" not in codes(given)
    small = slab(
        have={"kg": 0.2}, slab_height_m=0.0127, bars=SHORT_OR_STACKED, frame={"length_m": 0.13, "width_m": 0.1}
    )
    assert small["pour"]["bars"] == [0.0127]


def test_bars_and_bowls_of_unknown_size_hold_no_plan_and_that_is_said():
    unknown = [{"height_m": 0.5 * IN}]
    assert slab(have={"kg": 4.5}, bars=unknown)["pour"] == slab(have={"kg": 4.5}, bars_m=[0.5 * IN])["pour"]
    assert slab(have={"kg": 4.5}, bars=unknown)["sizes_unknown"] == ["bars", "bowl"]
    assert slab(have={"kg": 2}, bars=BARS, vessel_volume_m3=FOUR_LITRES)["sizes_unknown"] == []
    assert clusters()["sizes_unknown"] == ["bowl"]
    assert clusters(vessel_volume_m3=FOUR_LITRES)["sizes_unknown"] == []


def test_bars_are_said_one_way():
    with pytest.raises(Problem) as caught:
        slab(have={"kg": 1}, bars=BARS, bars_m=[0.0127])
    assert (caught.value.field, caught.value.code) == ("bars", "give_one_of")


def test_frame_in_hand_longer_than_the_bars_is_told():
    reply = slab(have={"kg": 2}, bars=BARS, frame={"length_m": 20 * IN, "width_m": 10 * IN})
    assert "frame_outruns_bars" in codes(reply)
    assert "frame_outruns_bars" not in codes(slab(have={"kg": 2}, bars=BARS, frame={"length_m": 0.2, "width_m": 0.4}))


def test_frame_is_no_larger_than_the_stone_it_is_poured_on():
    stone = {"base": "marble", "base_length_m": 0.3, "base_width_m": 0.4}
    pour = slab(have={"kg": 1.8}, **stone)["pour"]
    assert pour["length_m"] <= 0.4 + 1e-9
    assert pour["width_m"] <= 0.3 + 1e-9
    assert slab(have={"kg": 4}, **stone)["together"]["batches"] == 2


# Bowls --------------------------------------------------------------------------------------------------------------


def test_twenty_pounds_do_not_go_into_four_litres():
    reply = slab(have={"kg": 20 * LB}, bars=BARS, vessel_volume_m3=FOUR_LITRES)
    # Two thirds of the bowl, of caramel as dense as it is at 74 °C (choi_okos_1986).
    most_kg = FOUR_LITRES * 2 / 3 * materials.density(materials.resolved("caramel"), 74.0)
    assert groups(reply) == [(3, reply["cut"]["pieces"])]
    assert reply["caramel_kg"] == pytest.approx(20 * LB / 3)
    assert reply["caramel_kg"] < most_kg
    assert reply["together"]["caramel_kg"] == pytest.approx(20 * LB)


def test_what_is_more_than_ten_kilograms_is_several_batches_in_any_bowl():
    assert groups(slab(have={"kg": 12}, max_length_m=3, max_width_m=3))[0][0] == 2
    assert clusters(rows=[], caramel_kg=20, deposit_kg=0.012)["together"]["batches"] == 2


def test_clusters_are_shared_out_among_bowls():
    reply = clusters(vessel_volume_m3=0.001)
    assert groups(reply) == [(2, 40)]
    assert reply["batches"][0]["asked"]["rows"] == [
        {"clusters": 30, "deposit_kg": 0.012}, {"clusters": 10, "deposit_kg": 0.010}
    ]  # fmt: skip
    assert reply["clusters"] == 40
    uneven = clusters(rows=[{"clusters": 101, "deposit_kg": 0.012}], vessel_volume_m3=0.001)
    assert groups(uneven) == [(1, 51), (1, 50)]


@pytest.mark.parametrize(("each", "batches"), [(1, 2), (2, 3), (37, 41)])
def test_one_cluster_of_each_row_may_be_more_than_a_bowl_takes(each, batches):
    """It was refused; now the batches take one row after the other."""
    rows = [{"clusters": each, "deposit_kg": 0.2 - 0.001 * index} for index in range(20)]
    reply = clusters(rows=rows, second_kg=0.0, spread_m=0.15, vessel_volume_m3=0.004)
    assert reply["together"]["batches"] == batches
    asked = [(one["count"], row) for one in reply["batches"] for row in one["asked"]["rows"]]
    for wanted in rows:
        given = sum(count * row["clusters"] for count, row in asked if row["deposit_kg"] == wanted["deposit_kg"])
        assert given == each


# Batches ------------------------------------------------------------------------------------------------------------


def test_boxes_that_do_not_fit_one_slab_become_two():
    reply = slab(want={"boxes": 45, "per_box": 9}, bars=BARS)
    assert [one["count"] for one in reply["batches"]] == [1, 1]
    assert [one["asked"]["want"]["boxes"] for one in reply["batches"]] == [23, 22]
    assert reply["together"]["good"] >= 45 * 9


def test_boxes_larger_than_a_slab_are_cut_from_several():
    reply = slab(want={"boxes": 2, "per_box": 400}, bars=BARS)
    assert reply["together"]["good"] >= 800
    assert reply["together"]["batches"] == 3


def test_each_batch_planned_by_itself_is_one_batch():
    for request in (
        {"have": {"kg": 20 * LB}, "bars": BARS, "vessel_volume_m3": FOUR_LITRES},
        {"want": {"boxes": 45, "per_box": 9}, "bars": BARS, "yield_share": 0.9},
        {"want": {"pieces": 500}, "frame": {"length_m": 12 * IN, "width_m": 8 * IN}},
        {"have": {"kg": 5.5 * LB}, "frame": {"length_m": 12 * IN, "width_m": 8 * IN}},
    ):
        whole = slab(**request)
        assert whole["together"]["batches"] > 1
        for one in whole["batches"]:
            alone = slab(**(request | one["asked"]))
            assert alone["together"]["batches"] == 1
            assert (alone["caramel_kg"], alone["cut"]["pieces"]) == (one["caramel_kg"], one["pieces"])
            assert (alone["pour"]["length_m"], alone["good"]) == (one["length_m"], one["good"])
        assert whole["caramel_kg"] == whole["batches"][0]["caramel_kg"]


@settings(deadline=None, max_examples=60)
@given(
    pieces=st.integers(1, 1500),
    yield_share=st.floats(0.3, 1),
    volume_m3=st.floats(0.001, 0.01),
    bar_m=st.floats(0.15, 0.6),
    framed=st.booleans(),
)
def test_batches_give_what_is_wanted_and_fit(pieces, yield_share, volume_m3, bar_m, framed):
    frame = {"length_m": 0.2, "width_m": 0.15} if framed else "fit"
    bars = [{"height_m": 0.0127, "length_m": bar_m}]
    asked = {"want": {"pieces": pieces}, "yield_share": yield_share, "frame": frame, "bars": bars}
    refused = "too_little_caramel|too_many_batches|more_than_a_bowl"
    try:
        reply = slab(**asked, vessel_volume_m3=volume_m3)
    except Problem:
        with pytest.raises(Problem, match=refused):
            slab(**asked, vessel_volume_m3=volume_m3)
        return
    assert sum(one["count"] * one["good"] for one in reply["batches"]) >= pieces
    for one in reply["batches"]:
        assert one["caramel_kg"] <= min(10, volume_m3 * 2 / 3 * 1425) * 1.01
        assert framed or max(one["length_m"], one["width_m"]) <= bar_m - 0.0127 + 1e-9


def test_one_batch_is_as_it_was_before():
    reply = slab(have={"kg": 1.8}, block_kg=0.5)
    assert groups(reply) == [(1, reply["cut"]["pieces"])]
    assert reply["together"]["blocks"] == reply["blocks"] == 4
    assert reply["batches"][0]["asked"]["have"] == {"kg": 1.8}


def test_more_batches_than_anybody_plans_at_once_are_refused():
    with pytest.raises(Problem) as caught:
        slab(want={"pieces": 5000}, frame={"length_m": 0.1, "width_m": 0.1})
    assert (caught.value.field, caught.value.code) == ("want.pieces", "too_many_batches")
    assert slab(want={"pieces": caught.value.high}, frame={"length_m": 0.1, "width_m": 0.1})


def test_frame_in_hand_is_filled_again_and_the_last_slab_is_smaller_not_lower():
    frame = {"length_m": 0.3, "width_m": 0.25}
    reply = slab(have={"kg": 5.0}, frame=frame)
    assert [one["count"] for one in reply["batches"]] == [3, 1]
    last = slab(**({"have": {"kg": 5.0}, "frame": frame} | reply["batches"][1]["asked"]))
    assert last["pour"]["slab_height_m"] == reply["pour"]["slab_height_m"]
    assert last["pour"]["area_m2"] < reply["pour"]["area_m2"]


# Weights that are the same, and trim ----------------------------------------------------------------------------------

FRAME = {"length_m": 12 * IN, "width_m": 8 * IN}


def test_two_grams_too_much_are_not_told_as_two_and_a_half_pounds_of_two_and_a_half():
    reply = slab(have={"kg": 2.5 * LB}, frame=FRAME)
    assert 2.5 * LB - reply["caramel_kg"] == pytest.approx(0.0022, abs=0.0005)
    assert "more_than_frame_holds" not in codes(reply)
    assert "more_than_frame_holds" in codes(slab(have={"kg": 2.6 * LB}, frame=FRAME))


def test_trim_that_costs_a_row_is_told():
    reply = slab(have={"kg": 2.5 * LB}, frame=FRAME)
    assert reply["cut"]["pieces"] == 77
    told = next(one for one in reply["warnings"] if one["code"] == "trim_takes_a_row")
    assert (told["values"]["n"], told["values"]["untrimmed_n"]) == (77, 96)
    assert "trim_takes_a_row" not in codes(slab(have={"kg": 2.5 * LB}, frame=FRAME, trim_m=0))


# Yield --------------------------------------------------------------------------------------------------------------


def test_more_than_180_are_planned_where_97_of_100_turn_out_good():
    assert slab(want={"boxes": 20, "per_box": 9})["cut"]["pieces"] == 180
    reply = slab(want={"boxes": 20, "per_box": 9}, yield_share=0.97)
    assert reply["cut"]["pieces"] >= 186
    assert reply["good"] >= 180
    reply = clusters(rows=[{"clusters": 180, "deposit_kg": 0.012}], yield_share=0.97)
    assert (reply["together"]["pieces"], reply["together"]["good"]) == (186, 180)


def test_measured_trim_is_what_a_plan_expects():
    assert slab(have={"kg": 2})["trim_kg"] == slab(have={"kg": 2})["cut"]["trim_kg"]
    assert slab(have={"kg": 2}, trim_share=0.12)["trim_kg"] == pytest.approx(0.24)


# Old caramel ----------------------------------------------------------------------------------------------------------


def test_old_caramel_takes_the_place_of_fresh():
    reply = slab(have={"kg": 2}, old={"kg": 0.4, "remelts": 0}, block_kg=0.5)
    assert reply["remelt"] == {"old_kg": 0.4, "fresh_kg": 1.6, "n": 1, "allowed_n": None}
    assert reply["blocks"] == 4
    assert slab(have={"kg": 2}, old={"share": 0.2})["remelt"]["old_kg"] == pytest.approx(0.4)
    assert clusters(old={"share": 0.2})["remelt"]["old_kg"] == pytest.approx(0.2 * 1.42857, rel=1e-4)


@pytest.mark.parametrize(
    ("remelts", "allowed", "code"),
    [(0, None, "remelts_unknown"), (1, None, "remelted_often"), (0, 1, None), (1, 1, "remelted_too_often"),
     (0, 0, "remelted_too_often"), (1, 2, None)],
)  # fmt: skip
def test_label_says_how_often_caramel_may_be_melted_again(remelts, allowed, code):
    reply = slab(have={"kg": 2}, old={"share": 0.2, "remelts": remelts}, remelts_allowed=allowed)
    said = [one for one in codes(reply) if one.startswith("remelt")]
    assert said == ([code] if code else [])
    assert reply["remelt"]["n"] == remelts + 1


def test_more_old_caramel_than_a_quarter_is_told():
    assert "much_old_caramel" in codes(slab(have={"kg": 2}, old={"share": 0.3}))
    assert "much_old_caramel" not in codes(slab(have={"kg": 2}, old={"kg": 0.5}))


def test_old_caramel_is_shared_out_among_batches():
    reply = slab(have={"kg": 6}, bars=BARS, old={"kg": 0.9})
    assert reply["together"]["batches"] == 2
    assert reply["remelt"]["old_kg"] == pytest.approx(0.45)
    assert reply["batches"][0]["asked"]["old"]["share"] == pytest.approx(0.15)


def test_old_caramel_is_said_by_weight_or_by_share():
    for old in ({}, {"kg": 1, "share": 0.2}):
        with pytest.raises(Problem) as caught:
            slab(have={"kg": 2}, old=old)
        assert (caught.value.field, caught.value.code) == ("old", "give_one_of")


@pytest.mark.parametrize("kg", [9.9, 10.0, 10.05, 10.15, 20.0])
def test_ten_kilograms_are_one_batch_and_more_is_no_refusal(kg):
    # As much of the caramel as goes out of the bowl again, so that sums come to just about ten.
    lost = 0.0201
    for reply in (slab(have={"kg": kg}, max_length_m=3, max_width_m=3, residue=lost),
                  clusters(rows=[], caramel_kg=kg, deposit_kg=0.0107, residue=lost)):  # fmt: skip
        assert reply["together"]["batches"] == (1 if kg <= 10 else 2)
        assert reply["melt_request"]["mass_kg"] <= 10


@settings(deadline=None, max_examples=25)
@given(
    rows=st.lists(st.integers(1, 300), min_size=1, max_size=4),
    volume_m3=st.floats(0.0008, 0.006),
    yield_share=st.floats(0.5, 1),
)
def test_batches_of_clusters_give_every_size_wanted_and_fit_the_bowl(rows, volume_m3, yield_share):
    wanted = [{"clusters": number, "deposit_kg": 0.012 - 0.001 * index} for index, number in enumerate(rows)]
    assume(sum(rows) >= 10)
    reply = clusters(rows=wanted, vessel_volume_m3=volume_m3, yield_share=yield_share)
    for index, number in enumerate(rows):
        size = wanted[index]["deposit_kg"]
        asked = [
            (one["count"], row["clusters"])
            for one in reply["batches"]
            for row in one["asked"]["rows"]
            if row["deposit_kg"] == size
        ]
        assert sum(count * each for count, each in asked) == number
    density = materials.density(materials.resolved("caramel"), 70.0)
    assert all(one["caramel_kg"] <= density * volume_m3 * 2 / 3 * 1.01 for one in reply["batches"])
    assert reply["together"]["good"] >= sum(rows)
