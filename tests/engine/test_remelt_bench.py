"""Old caramel at the bench, and a frame that is not moved in silence."""

import copy

import pytest

from amberbench.engine import catalogue
from tests.bench import SLAB_REQUEST, Bench, planned_slab


def bench(**request):
    asked = SLAB_REQUEST | request
    return Bench(planned_slab() | {"request": asked, "reply": catalogue.call("slab.plan", asked)})


def test_old_caramel_is_weighed_before_fresh_and_both_are_kept():
    one = bench(old={"kg": 0.3, "remelts": 0})
    one.does("ready_checked", 60)
    assert one.advice["say"]["code"] == "say.weigh_old"
    assert one.advice["number"]["value"] == 0.3
    assert one.advice["entry"]["kind"] == "old_weighed"
    one.does("old_weighed", 20, kg=0.31)
    assert one.advice["say"]["code"] == "say.weigh"
    assert one.advice["more"] == {"code": "more.old_weighed", "values": {"old_kg": 0.31}}
    one.does("weighed", 60, kg=1.8, lot="A-117")
    assert (one.run["weighed_kg"], one.run["remelt"]["weighed_kg"], one.run["remelt"]["n"]) == (1.8, 0.31, 1)


@pytest.mark.parametrize(
    ("old", "n"), [(None, 0), ({"share": 0.2, "remelts": 0}, 1), ({"share": 0.2, "remelts": 1}, 2)]
)
def test_leftover_knows_how_often_it_was_melted_again(old, n):
    one = bench(old=old, remelts_allowed=2)
    one.sets_up() if old is None else (
        one.does("ready_checked"),
        one.does("old_weighed", kg=0.3),
        one.does("weighed", kg=1.8),
    )
    for step in ("melt", "cool", "loosen", "score", "cut", "count"):
        one.does("counted", pieces=190) if step == "count" else one.does(
            "poured", bulk_c=75.0
        ) if step == "melt" else None
        one.does("step_skipped", step=step) if step not in ("melt", "count") else None
    assert one.advice["step"] == "weigh_out"
    assert one.advice["more"] == {"code": "more.melted_again", "values": {"n": n}}
    one.does("weighed_out", kg=0.2, what="rest", seen=0)
    one.does("weighed_out", kg=0.02, what="bowl", seen=1)
    assert one.advice["more"] == {"code": "more.leftovers_allowed", "values": {"n": 2 - n}}


def test_none_of_the_old_caramel_leaves_the_count_at_nought():
    one = bench(old={"kg": 0.3, "remelts": 1})
    one.does("ready_checked", 60)
    assert one.advice["entry"]["low"] == 0.0
    one.does("old_weighed", kg=0.0)
    assert one.advice["say"]["code"] == "say.weigh"
    assert one.run["remelt"]["n"] == 0


def test_old_caramel_that_was_not_planned_does_not_fit():
    one = bench()
    one.does("ready_checked")
    one.does("old_weighed", kg=0.3)
    assert [each["why"] for each in one.run["ignored"]] == ["not_in_this_batch"]


def test_plan_of_before_has_no_old_caramel():
    plan = copy.deepcopy(planned_slab())
    del plan["reply"]["remelt"]
    one = Bench(plan)
    one.sets_up()
    assert "remelt" not in one.run
    assert one.run["weighed_kg"] == 1.8


# The frame ------------------------------------------------------------------------------------------------------------


def poured_into(kg):
    """What is said of the frame when the caramel is ready, after so much was weighed in."""
    one = bench()
    one.does("ready_checked", 60)
    set_up = one.plan["reply"]["pour"]["length_m"]
    one.does("weighed", 60, kg=kg, lot="A-117")
    one.melts()
    assert one.advice["step"] == "pour"
    return set_up, one.advice["more"]


def test_frame_that_was_set_up_stays_for_a_little_more_or_less():
    set_up, more = poured_into(1.812)
    assert more["code"] == "more.pour"
    assert more["values"]["length_m"] == set_up


def test_frame_that_has_to_be_moved_says_from_where_to_where():
    set_up, more = poured_into(2.0)
    assert more["code"] == "more.move_bars"
    assert more["values"]["planned_m"] == set_up
    assert more["values"]["length_m"] == pytest.approx(set_up * 2.0 / 1.8)


@pytest.mark.parametrize(("kg", "code"), [(1.81, None), (2.0, "more.move_bars")])
def test_bars_that_have_to_be_moved_are_told_before_anything_is_hot(kg, code):
    one = bench()
    one.does("ready_checked", 60)
    one.does("weighed", 60, kg=kg, lot="A-117")
    assert one.advice["step"] == "burst"
    assert (one.advice["more"] and one.advice["more"]["code"]) == code
