"""What is left to do of the shop's batches and orders, as tasks of a day."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests.bench import NINE_OCLOCK_MS, Bench, dipped_slab, planned_bowl, planned_clusters, planned_slab
from tests.strategies_scheduling import HOUR_S, SHOP

MIDNIGHT_MS = NINE_OCLOCK_MS - 9 * HOUR_S * 1000
WEEK = ["monday", "tuesday", "wednesday", "thursday", "friday"]
DAYS = [{"weekday": name, "midnight_ms": MIDNIGHT_MS + 864e5 * number} for number, name in enumerate(WEEK)]


def asked(*benches, **more):
    batches = [{"id": f"b{n}", "plan": bench.plan, "run": bench.run} for n, bench in enumerate(benches)]
    request = {"shop": SHOP, "days": DAYS, "now_ms": max(bench.now_ms for bench in benches), "batches": batches}
    return catalogue.call("schedule.tasks", request | more)


def planned(reply, **more):
    return catalogue.call("schedule.plan", reply["day"] | more)


def by_id(rows):
    return {row["id"]: row for row in rows}


def of_product(plan, product_id):
    return plan | {"product_id": product_id}


def test_a_planned_slab_is_melted_then_cut_once_it_is_cool_then_counted():
    reply = asked(Bench())
    rows = by_id(planned(reply)["tasks"])
    assert list(rows) == ["b0/melt", "b0/cut", "b0/count"]
    cool_s = planned_slab()["reply"]["cool"]["ready_s"]
    assert rows["b0/melt"]["end_s"] - rows["b0/melt"]["hands_end_s"] == pytest.approx(cool_s, abs=60)
    assert rows["b0/cut"]["start_s"] >= rows["b0/melt"]["end_s"]
    assert [one["name"] for one in rows["b0/melt"]["takes"]] == ["bars", "base", "oven", "people"]


@pytest.mark.parametrize("plan", [planned_slab, dipped_slab, planned_clusters, planned_bowl])
def test_every_kind_of_batch_ends_with_its_last_step_and_finds_its_place(plan):
    bench = Bench(plan())
    reply = asked(bench)
    names = [row["name"] for row in reply["rows"]]
    assert len(names) >= 2
    assert len(planned(reply)["tasks"]) == len(names)
    bench.does("closed")
    assert asked(bench)["rows"] == []


def test_what_was_poured_has_begun_and_waits_as_long_as_it_cools():
    bench = Bench()
    bench.sets_up()
    bench.melts()
    bench.does("poured", 30, bulk_c=74.0)
    bench.waits(1800)
    reply = asked(bench)
    melt = by_id(reply["day"]["tasks"])["b0/melt"]
    assert melt["begun_s"] == pytest.approx(9 * HOUR_S + 61)
    assert by_id(planned(reply)["tasks"])["b0/melt"]["start_s"] == 9 * HOUR_S + 60
    assert [row["begun"] for row in reply["rows"]] == [True, False, False]


def test_a_melt_that_is_twenty_minutes_late_moves_the_rest_and_nothing_pinned():
    late, other = Bench(), Bench(device="phone-b")
    late.sets_up()
    other.does("pinned", task="melt", at_ms=NINE_OCLOCK_MS + 2 * HOUR_S * 1000)
    in_time = by_id(planned(asked(late, other))["tasks"])
    late.waits(60 * 60)
    reply = asked(late, other)
    then = by_id(planned(reply, rounds=20)["tasks"])
    assert then["b0/melt"]["start_s"] == in_time["b0/melt"]["start_s"]
    assert then["b0/cut"]["start_s"] > in_time["b0/cut"]["start_s"] + 20 * 60
    assert then["b1/melt"]["start_s"] == in_time["b1/melt"]["start_s"] == 11 * HOUR_S
    assert by_id(reply["rows"])["b1/melt"]["pinned"]


def test_a_pin_is_taken_away_again_and_is_no_step_of_the_batch():
    bench = Bench()
    bench.sets_up()
    before = bench.run
    bench.does("pinned", task="cut", at_ms=NINE_OCLOCK_MS + 1e7)
    assert bench.run["pins"] == {"cut": NINE_OCLOCK_MS + 1e7}
    assert (bench.run["undoable"], bench.run["touched_ms"]) == (before["undoable"], before["touched_ms"])
    bench.does("pinned", task="cut", at_ms=None)
    assert bench.run["pins"] == {}


def test_two_batches_pinned_to_one_minute_with_one_oven_conflict_and_say_what_they_want():
    one, two = Bench(), Bench(device="phone-b")
    for bench in (one, two):
        bench.does("pinned", task="melt", at_ms=NINE_OCLOCK_MS + HOUR_S * 1000)
    reply = planned(asked(one, two))
    assert [conflict["wants"] for conflict in reply["conflicts"]] == ["oven"]


def test_boxes_wait_for_the_batch_that_makes_them_and_are_due_before_they_are_fetched():
    bench = Bench(of_product(planned_slab(), "squares"))
    wanted_ms = MIDNIGHT_MS + 4 * 864e5 + 15 * HOUR_S * 1000
    order = {"order_id": "bakery", "wanted_ms": wanted_ms, "lines": [{"box_id": "nine", "missing": 19}]}
    reply = asked(bench, orders=[order])
    box = by_id(reply["day"]["tasks"])["order/bakery/box"]
    assert [one["task"] for one in box["after"]] == ["b0/count"]
    row = by_id(planned(reply)["jobs"])["order/bakery"]
    assert row["late_s"] == 0
    assert by_id(reply["day"]["jobs"])["order/bakery"]["due_s"] == 4 * 24 * HOUR_S + 15 * HOUR_S - 900


def test_boxing_that_was_pinned_stays_where_it_is_when_its_batch_comes_late():
    bench = Bench(of_product(planned_slab(), "squares"))
    at_ms = MIDNIGHT_MS + 864e5 + 10 * HOUR_S * 1000
    order = {"order_id": "bakery", "pinned_ms": at_ms, "lines": [{"box_id": "nine", "missing": 19}]}
    before = asked(bench, orders=[order])
    assert by_id(before["rows"])["order/bakery/box"]["pinned"]
    assert by_id(planned(before)["tasks"])["order/bakery/box"]["start_s"] == 34 * HOUR_S
    bench.waits(20 * 60)
    later = by_id(planned(asked(bench, orders=[order]), rounds=20)["tasks"])
    assert later["order/bakery/box"]["start_s"] == 34 * HOUR_S
    # Before what goes into the boxes is made it cannot stand; the plan says what it wants.
    early = asked(bench, orders=[order | {"pinned_ms": bench.now_ms}])
    assert {one["task"] for one in planned(early)["conflicts"]} == {"order/bakery/box"}


def test_an_order_that_cannot_be_ready_is_late_and_another_person_would_help():
    benches = [Bench(of_product(dipped_slab(), "squares"), device=f"phone-{n}") for n in range(2)]
    lines = [{"box_id": "nine", "missing": 30}]
    order = {"order_id": "bakery", "wanted_ms": MIDNIGHT_MS + 14 * HOUR_S * 1000, "lines": lines}
    shop = SHOP | {"people": [], "ovens": [{"id": "a"}, {"id": "b"}]}
    reply = planned(asked(*benches, orders=[order], shop=shop))
    assert reply["late_jobs"] == 1
    assert "people" in [one["name"] for one in reply["helps"]]


def test_dipping_follows_the_cut_the_same_day_and_is_done_in_goes():
    reply = asked(Bench(dipped_slab()))
    tasks = by_id(reply["day"]["tasks"])
    assert tasks["b0/dip"]["after"][0]["most_s"] == 8 * HOUR_S
    assert all(task["hands_s"] <= 2 * HOUR_S for name, task in tasks.items() if "/dip" in name)


def test_three_closed_batches_that_took_twice_as_long_to_cut_make_the_next_cut_longer():
    def closed():
        bench = Bench()
        bench.sets_up()
        bench.melts()
        bench.does("poured", 30, bulk_c=74.0)
        bench.does("touched", 9000, firm=True)
        bench.does("freed", 60)
        bench.does("flipped", 1140)
        bench.does("cut", 1200)
        bench.does("closed", 600)
        return {"plan": bench.plan, "run": bench.run}

    usual = by_id(asked(Bench())["day"]["tasks"])["b0/cut"]["hands_s"]
    learnt = by_id(asked(Bench(), closed=[closed() for _ in range(3)])["day"]["tasks"])["b0/cut"]["hands_s"]
    # From the touch on: the first minute, too, was hands loosening it.
    assert learnt == pytest.approx(60 + 1140 + 1200)
    assert learnt > 1.5 * usual
    assert by_id(asked(Bench(), closed=[closed()])["day"]["tasks"])["b0/cut"]["hands_s"] == usual


def wrapped(wrap_s, opened_s=0, evening_s=0):
    """A closed batch, opened so long before it was set up, cut so long before its pieces were wrapped."""
    bench = Bench(planned_slab() | {"finish": "wrapped"})
    bench.waits(opened_s)
    bench.sets_up()
    bench.melts()
    bench.does("poured", 30, bulk_c=74.0)
    bench.does("touched", 9000, firm=True)
    bench.does("freed", 60)
    bench.does("flipped", 600)
    bench.does("cut", 400)
    bench.does("wrapped", evening_s + wrap_s)
    bench.does("counted", 300, pieces=204)
    bench.does("closed", 60)
    return {"plan": bench.plan, "run": bench.run}


def hands(closed):
    bench = Bench(planned_slab() | {"finish": "wrapped"})
    return {task["id"]: task["hands_s"] for task in asked(bench, closed=closed)["day"]["tasks"]}


def test_wrapping_begins_when_the_cutting_ends_and_takes_as_long_as_it_took():
    assert hands([])["b0/wrap"] == pytest.approx(2340)
    assert hands([wrapped(2040)] * 3)["b0/wrap"] == pytest.approx(2040 + 300 + 60)


def test_a_batch_opened_days_ahead_took_no_longer_to_set_up_and_a_night_in_between_is_not_work():
    at_once, ahead = hands([wrapped(2040)] * 3), hands([wrapped(2040, opened_s=2 * 86400)] * 3)
    assert at_once["b0/melt"] < ahead["b0/melt"] <= at_once["b0/melt"] + 600
    assert hands([wrapped(2040, evening_s=14 * 3600)] * 3)["b0/wrap"] == pytest.approx(2340)


def test_a_shop_opens_by_the_clock_on_a_day_of_25_hours_and_of_23():
    sunday_ms = 1_792_879_200_000.0  # midnight of 2026-10-25 in Berlin, where it then is 03:00 twice
    days = [{"weekday": "sunday", "midnight_ms": sunday_ms, "noon_ms": sunday_ms + 13 * HOUR_S * 1000}]
    days += [{"weekday": "monday", "midnight_ms": sunday_ms + 25 * HOUR_S * 1000}]
    days += [{"weekday": "sunday", "midnight_ms": sunday_ms, "noon_ms": sunday_ms + 11 * HOUR_S * 1000}]
    hours = asked(Bench(), shop={"work_days": []}, days=days, now_ms=sunday_ms)["day"]["hours"]
    assert [one["from_s"] / HOUR_S for one in hours] == [9, 25 + 8, 7]
    assert [one["to_s"] / HOUR_S for one in hours] == [18, 25 + 17, 16]


def test_allergens_of_two_batches_lay_a_wash_between_them():
    nuts = Bench(of_product(planned_clusters(), "nuts"))
    squares = Bench(planned_slab() | {"contains": ["milk"], "labels_known": True}, device="phone-b")
    reply = asked(nuts, squares)
    assert "pecan" in by_id(reply["day"]["jobs"])["b0"]["contains"]
    assert by_id(reply["day"]["jobs"])["b1"]["contains"] == ["milk"]


def test_days_off_are_no_hours_and_a_shop_that_says_nothing_works_by_day():
    assert len(asked(Bench())["day"]["hours"]) == 3
    reply = asked(Bench(), shop={})
    assert reply["day"]["hours"][0] == {"from_s": 8 * HOUR_S, "to_s": 17 * HOUR_S}
    assert (reply["day"]["people"], reply["day"]["resources"]) == (1, [])


def test_a_batch_named_twice_is_refused():
    batch = {"id": "b", "plan": planned_slab(), "run": Bench().run}
    with pytest.raises(Problem) as problem:
        catalogue.call("schedule.tasks", {"shop": {}, "days": DAYS, "now_ms": 1.0, "batches": [batch, batch]})
    assert problem.value.code == "named_twice"
