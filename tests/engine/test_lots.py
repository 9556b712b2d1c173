"""Lots: what comes, what is left, and what does not add up, which is shown and never refused."""

import random

import pytest

from amberbench.engine import catalogue
from amberbench.engine.batch import label
from amberbench.engine.core import dates
from amberbench.engine.core.problems import Problem
from amberbench.engine.stock import overview
from amberbench.engine.trace import graph
from tests.bench import Bench, planned_clusters
from tests.conforming import conforms, is_document
from tests.strategies_streams import HOUR_MS, NOW_MS, TODAY

CARAMEL = {"material": "caramels/firm", "packs": 4, "pack_amount": 2.5, "supplier_lot": "118"}


def event(kind, at_ms=NOW_MS, device_id="a", seq=1, **body):
    return {"id": f"{device_id}{seq}{kind}{at_ms}", "device_id": device_id, "seq": seq, "at_ms": at_ms, "offset_ms": 0,
            "kind": kind, "body": body}  # fmt: skip


def folded(*events, lot_id="l1"):
    reply = catalogue.call("lot.fold", {"id": lot_id, "events": list(events)})
    conforms("lot.fold", reply)
    return reply


def lot(*events, lot_id="l1"):
    document = folded(*events, lot_id=lot_id)["document"]
    is_document("Lot", document)
    return document


def received(lot_id="l1", at_ms=NOW_MS, **more):
    return lot(event("received", at_ms, **CARAMEL | more), lot_id=lot_id)


def use(amount, lot_id="l1", at_ms=NOW_MS + HOUR_MS, batch_id="b1"):
    return {"lot_id": lot_id, "amount": amount, "at_ms": at_ms, "batch_id": batch_id}


def seen(lots, uses=(), materials=()):
    request = {"lots": lots, "uses": list(uses), "materials": list(materials), "today": TODAY}
    reply = catalogue.call("stock.overview", request)
    conforms("stock.overview", reply)
    return reply


def row(lots, uses=(), lot_id="l1"):
    return next(one for one in seen(lots, uses)["lots"] if one["lot_id"] == lot_id)


def checked(kind, body, **more):
    request = {"kind": kind, "body": body, "currency": "EUR", "today": TODAY, "now_ms": NOW_MS, "lot_id": "new"} | more
    reply = catalogue.call("lot.check", request)
    conforms("lot.check", reply)
    return [one["code"] for one in reply["warnings"]]


def refused(kind, body, **more):
    with pytest.raises(Problem) as caught:
        checked(kind, body, **more)
    return caught.value.code, caught.value.field


def test_delivery_of_four_blocks_is_a_lot_with_all_of_it_left():
    document = received(price_minor=6400, currency="EUR", best_by="2026-03-31")
    assert (document["amount"], document["received_ms"], document["best_by"]) == (10.0, NOW_MS, "2026-03-31")
    assert row([document])["left"] == 10.0


def test_later_word_on_a_delivery_corrects_it_and_it_came_when_it_came():
    document = lot(event("received", **CARAMEL), event("received", NOW_MS + 9, seq=2, **CARAMEL | {"packs": 3}))
    assert (document["amount"], document["received_ms"]) == (7.5, NOW_MS)


def test_what_is_left_is_what_came_less_uses_and_what_was_thrown_away():
    thrown = event("discarded", NOW_MS + 5, seq=2, amount=0.5, why="dropped")
    assert row([lot(event("received", **CARAMEL), thrown)], [use(2.0), use(1.5)])["left"] == pytest.approx(6.0)


def test_count_stands_over_what_was_reckoned_before_it():
    counted = event("left_counted", NOW_MS + 2 * HOUR_MS, seq=2, left=5.0)
    lots = [lot(event("received", **CARAMEL), counted)]
    assert row(lots, [use(2.0), use(1.0, at_ms=NOW_MS + 3 * HOUR_MS)])["left"] == pytest.approx(4.0)


def test_event_taken_back_counts_as_not_there_and_may_come_back():
    thrown = event("discarded", NOW_MS + 5, seq=2, amount=4.0)
    back = event("undone", NOW_MS + 6, seq=3, event_id=thrown["id"])
    again = event("redone", NOW_MS + 7, seq=4, event_id=thrown["id"])
    came = event("received", **CARAMEL)
    assert lot(came, thrown, back)["discarded"] == []
    assert len(lot(came, thrown, back, again)["discarded"]) == 1


def test_used_below_zero_on_two_phones_is_a_difference_and_both_are_believed():
    found = row([received()], [use(6.0), use(6.0, batch_id="b2")])
    assert (found["left"], found["differences"]) == (pytest.approx(-2.0), ["below_zero"])
    assert seen([received()], [use(6.0), use(6.0)])["to_count"] == ["l1"]


def test_scale_s_own_error_is_no_difference_but_one_box_too_many_is():
    assert row([received()], [use(10.05)])["differences"] == []
    cups = received(material="materials/cups", unit="each", packs=1, pack_amount=500)
    assert row([cups], [use(501)])["differences"] == ["below_zero"]


def test_count_settles_a_difference():
    counted = event("left_counted", NOW_MS + 2 * HOUR_MS, seq=2, left=0)
    assert row([lot(event("received", **CARAMEL), counted)], [use(12.0)])["differences"] == []


def test_lot_used_before_it_came_or_that_never_came_is_a_difference():
    before = use(1.0, at_ms=NOW_MS - 20 * HOUR_MS)
    assert row([received()], [before])["differences"] == ["used_before_it_came"]
    # Written down in the evening, in use since the morning.
    assert row([received()], [use(1.0, at_ms=NOW_MS - 3 * HOUR_MS)])["differences"] == []
    assert row([], [use(1.0, lot_id="l9")], lot_id="l9")["differences"] == ["never_came"]


def test_one_delivery_written_down_on_two_phones_is_shown_and_merging_takes_it_away():
    first, second = received("l1"), received("l2", NOW_MS + HOUR_MS)
    assert seen([first, second])["to_count"] == ["l2"]
    assert row([first, second], lot_id="l2")["differences"] == ["written_twice"]
    merged = lot(event("received", NOW_MS + HOUR_MS, **CARAMEL), event("merged", NOW_MS + 2 * HOUR_MS, seq=2,
                 into_lot_id="l1", adds=False), lot_id="l2")  # fmt: skip
    reply = seen([first, merged], [use(1.0), use(2.0, lot_id="l2")])
    assert [(one["lot_id"], one["left"]) for one in reply["lots"]] == [("l1", pytest.approx(7.0))]
    assert reply["to_count"] == []


def test_two_deliveries_of_one_lot_on_different_days_are_two():
    assert seen([received("l1"), received("l2", NOW_MS + 48 * HOUR_MS)])["to_count"] == []


def test_what_is_poured_together_adds_up():
    rest = lot(event("made", material="caramels/firm", amount=0.8, batch_id="b0"), event("merged", NOW_MS + 5, seq=2,
               into_lot_id="l1"), lot_id="l2")  # fmt: skip
    assert row([received(), rest], [use(0.3)])["left"] == pytest.approx(10.5)


def test_lot_gives_the_one_it_is_poured_to_what_it_had_left_then():
    day = 24 * HOUR_MS
    counted = event("left_counted", NOW_MS + 3 * day, seq=2, left=10.0)
    first = lot(event("received", **CARAMEL), counted)
    came = event("received", **CARAMEL | {"packs": 2, "supplier_lot": ""})
    poured = event("merged", NOW_MS + 4 * day, seq=3, into_lot_id="l1")
    taken = [use(2.0, "l2", at_ms=NOW_MS + 2 * day)]
    assert row([first, lot(came, poured, lot_id="l2")], taken)["left"] == pytest.approx(13.0)
    # Counted itself before it was poured; what was taken of it by its old name since is taken of both.
    of_it = event("left_counted", NOW_MS + 2 * day, seq=2, left=2.0)
    rest = lot(came, of_it, poured, lot_id="l2")
    found = row([received(packs=2, supplier_lot=""), rest])
    assert (found["left"], found["got"]) == (pytest.approx(7.0), 10.0)
    later = use(1.0, "l2", at_ms=NOW_MS + 5 * day)
    assert row([received(packs=2, supplier_lot=""), rest], [later])["left"] == pytest.approx(6.0)


@pytest.mark.parametrize("seed", range(30))
def test_what_is_left_of_lots_poured_together_is_what_a_kitchen_would_have_seen(seed):
    """Blocks that are weighed, used, thrown away and poured in the order of time, each by hand."""
    rng = random.Random(seed)
    lot_ids = ["l0", "l1", "l2", "l3"]
    facts = {one: [event("received", **CARAMEL | {"supplier_lot": ""})] for one in lot_ids}
    holds, where, uses = dict.fromkeys(lot_ids, 10.0), {one: one for one in lot_ids}, []
    for nth in range(1, 30):
        at_ms, one = NOW_MS + nth * HOUR_MS, rng.choice(lot_ids)
        amount, what = rng.randrange(1, 9) / 8, rng.randrange(4)
        if what == 0:
            uses.append(use(amount, one, at_ms=at_ms))
        elif what == 1:
            facts[one].append(event("discarded", at_ms, seq=nth, amount=amount))
        elif where[one] != one:
            continue
        elif what == 2:
            holds[one] = amount
            facts[one].append(event("left_counted", at_ms, seq=nth, left=amount))
        else:
            into = rng.choice(lot_ids)
            if where[into] == into != one:
                facts[one].append(event("merged", at_ms, seq=nth, into_lot_id=into))
                holds[into] += holds.pop(one)
                where = {name: into if at == one else at for name, at in where.items()}
        if what < 2:
            holds[where[one]] -= amount
    lots = [lot(*facts[one], lot_id=one) for one in lot_ids]
    assert {one["lot_id"]: one["left"] for one in seen(lots, uses)["lots"]} == pytest.approx(holds)


def test_lots_merged_in_a_ring_each_stand_by_themselves():
    one = lot(event("received", **CARAMEL), event("merged", NOW_MS + 5, seq=2, into_lot_id="l2"), lot_id="l1")
    other = lot(event("received", **CARAMEL), event("merged", NOW_MS + 5, seq=2, into_lot_id="l1"), lot_id="l2")
    assert {found["lot_id"]: found["left"] for found in seen([one, other])["lots"]} == {"l1": 10.0, "l2": 10.0}


def test_leftovers_that_went_into_the_batch_they_are_of_are_shown_as_a_ring():
    first = lot(event("made", material="caramels/firm", amount=1.0, batch_id="b1"), lot_id="l1")
    second = lot(event("made", material="caramels/firm", amount=1.0, batch_id="b2"), lot_id="l2")
    uses = [use(0.5, "l1", batch_id="b2"), use(0.5, "l2", batch_id="b1")]
    assert row([first, second], uses, "l1")["differences"] == ["ring"]
    assert row([first, second], uses[:1], "l1")["differences"] == []
    body = {"material": "caramels/firm", "amount": 1.0, "batch_id": "b1"}
    assert refused("made", body, lot_id="l1", lots=[first, second], uses=uses) == ("ring", "batch_id")


def test_oldest_best_by_is_taken_first_and_what_is_empty_comes_last():
    lots = [received("late", best_by="2026-05-01", supplier_lot=""), received("soon", best_by="2026-01-01",
            supplier_lot=""), received("never", supplier_lot="")]  # fmt: skip
    lots.append(received("gone", best_by="2025-12-01", supplier_lot=""))
    found = seen(lots, [use(10.0, "gone")])["lots"]
    assert [one["lot_id"] for one in found] == ["soon", "late", "never", "gone"]
    assert [one["is_open"] for one in found] == [True, True, True, False]


def test_material_below_its_lowest_is_to_be_bought():
    materials = [{"material": "caramels/firm", "lowest": 8.0}, {"material": "materials/nuts", "lowest": 1.0}]
    reply = seen([received()], [use(3.0)], materials)
    assert [(one["material"], one["left"], one["is_low"]) for one in reply["materials"]] == [
        ("caramels/firm", pytest.approx(7.0), True), ("materials/nuts", 0.0, True),
    ]  # fmt: skip
    assert not seen([received()], [use(1.0)], materials)["materials"][0]["is_low"]


def test_what_is_past_its_day_keeps_no_material_from_being_bought():
    past = received(packs=2, best_by="2025-11-01")
    reply = seen([past], (), [{"material": "caramels/firm", "lowest": 2.0}])
    assert [(one["left"], one["is_low"]) for one in reply["materials"]] == [(0.0, True)]
    assert reply["lots"][0]["left"] == 5.0


def test_pieces_are_not_added_to_kilograms():
    nuts = {"material": "materials/nuts", "packs": 1, "supplier_lot": ""}
    lots = [received("l1", pack_amount=2.0, **nuts), received("l2", pack_amount=500, unit="each", **nuts)]
    reply = seen(lots, (), [{"material": "materials/nuts", "unit": "kg", "lowest": 3.0}])
    assert [(one["left"], one["is_low"]) for one in reply["materials"]] == [(2.0, True)]
    assert {one["lot_id"]: one["differences"] for one in reply["lots"]} == {"l1": [], "l2": ["other_unit"]}
    body = nuts | {"pack_amount": 500, "unit": "each"}
    assert refused("received", body, materials=["materials/nuts"], unit="kg") == ("not_an_option", "unit")
    assert checked("received", body, materials=["materials/nuts"], unit="each") == ["no_price"]
    merged = {"into_lot_id": "l1"}
    assert refused("merged", merged, lot_id="l2", lots=lots) == ("other_material", "into_lot_id")


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        ({"price_minor": -1}, ("too_low", "price_minor")),
        ({"price_minor": 100, "currency": "USD"}, ("other_currency", "currency")),
        ({"best_by": "31.3.2026"}, ("not_a_day", "best_by")),
        ({"best_by": "2026-02-30"}, ("not_a_day", "best_by")),
        ({"packs": 0}, ("too_low", "packs")),
        ({"pack_amount": 0}, ("too_low", "pack_amount")),
        ({"material": "caramels/gone"}, ("not_in_shop", "material")),
    ],
)
def test_delivery_that_makes_no_sense_is_refused_by_its_field(change, problem):
    assert refused("received", CARAMEL | change, materials=["caramels/firm"]) == problem


def test_delivery_may_lack_its_price_be_past_its_best_by_or_be_known_and_says_so():
    assert checked("received", CARAMEL) == ["no_price"]
    assert checked("received", CARAMEL | {"price_minor": 1, "best_by": "2025-11-23"}) == ["best_by_over"]
    assert checked("received", CARAMEL | {"price_minor": 1}, lots=[received()]) == ["received_already"]
    assert checked("left_counted", {"left": 11}, lot_id="l1", lots=[received()]) == ["more_than_came"]
    assert checked("discarded", {"amount": 11}, lot_id="l1", lots=[received()]) == ["more_than_is_left"]


def test_lot_is_merged_into_another_of_its_material_alone():
    nuts = received("n", material="materials/nuts")
    lots = [received(), nuts]
    assert refused("merged", {"into_lot_id": "l1"}, lot_id="l1", lots=lots)[0] == "ring"
    assert refused("merged", {"into_lot_id": "n"}, lot_id="l1", lots=lots)[0] == "other_material"
    assert refused("merged", {"into_lot_id": "x"}, lot_id="l1", lots=lots)[0] == "no_such_lot"
    assert refused("merged_away", {}, lots=lots) == ("not_an_option", "kind")


def test_what_makes_no_sense_is_passed_over_and_the_rest_stands():
    odd = [event("received", seq=2, **CARAMEL | {"packs": "four"}), event("sold", seq=3), 7]
    reply = folded(event("received", **CARAMEL | {"best_by": "soon"}), *odd)
    assert (reply["document"]["amount"], reply["document"]["best_by"]) == (10.0, None)
    assert sorted(one["why"] for one in reply["ignored"]) == ["malformed", "not_a_number", "unknown_kind"]


@pytest.mark.parametrize("seed", range(20))
def test_lot_is_the_same_in_whatever_order_its_events_come(seed):
    from tests.strategies_streams import SENSIBLE

    rng = random.Random(seed)
    for name in ("lot.fold", "order.fold", "pack.fold"):
        request = SENSIBLE[name](rng)
        before = catalogue.call(name, request)["document"]
        rng.shuffle(request["events"])
        request["events"] += request["events"][:2]
        assert catalogue.call(name, request)["document"] == before


@pytest.mark.parametrize(("day", "is_one"), [
    ("2024-02-29", True), ("2025-02-29", False), ("1900-02-29", False), ("2000-02-29", True), ("2025-12-31", True),
    ("2025-13-01", False), ("2025-00-10", False), ("25-01-01", False), ("2025-1-01", False), ("2025-01-0x", False),
    ("", False), ("2025-01-01 ", False),
])  # fmt: skip
def test_day_is_one_of_the_calendar(day, is_one):
    assert dates.is_day(day) is is_one


def test_scale_share_is_the_one_that_is_said():
    assert overview.is_below_zero(-0.11, 10.0, "kg")
    assert not overview.is_below_zero(-0.09, 10.0, "kg")


def test_batch_takes_of_several_lots_beside_the_lot_that_was_typed_and_stock_falls():
    batch = Bench()
    batch.does("ready_checked", 60)
    batch.does(
        "weighed", 120, kg=1.8, lot="118", lots=[{"lot_id": "l1", "amount": 1.2}, {"lot_id": "l2", "amount": 0.6}]
    )
    took = label.of_run(batch.run)
    assert took["lot"] == "118"
    assert took["uses"] == [
        {"lot_id": "l1", "amount": 1.2, "at_ms": batch.now_ms},
        {"lot_id": "l2", "amount": 0.6, "at_ms": batch.now_ms},
    ]
    uses = [one | {"batch_id": "batch-1"} for one in took["uses"]]
    lots = [received(), received("l2")]
    assert (row(lots, uses)["left"], row(lots, uses, "l2")["left"]) == (pytest.approx(8.8), pytest.approx(9.4))
    batch = {"batch_id": "batch-1", "is_bowl": False, "lot": None, "dipped_lots": [], "under_lots": [],
             "leftover_lot": None, "used_lots": [use["lot_id"] for use in took["uses"]]}  # fmt: skip
    assert graph.links_of_batch(batch) == [
        ("lot/l1", "batch/batch-1"),
        ("lot/l2", "batch/batch-1"),
    ]


def test_weighing_that_is_taken_back_gives_its_lots_back():
    batch = Bench()
    batch.does("ready_checked", 60)
    weighed = batch.does("weighed", 120, kg=1.8, lots=[{"lot_id": "l1", "amount": 1.8}])
    batch.does("undone", event_id=weighed)
    assert label.of_run(batch.run)["uses"] == []


def test_nuts_and_old_caramel_are_taken_of_lots_too():
    batch = Bench(planned_clusters())
    batch.does("ready_checked", 60)
    batch.does("allergens_checked", 5)
    named = {"material": batch.run["planned"]["under"][0]["material"], "lot": "N-1"}
    batch.does("under_lot_named", 5, **named, lots=[{"lot_id": "nuts", "amount": 0.4}])
    assert [one["lot_id"] for one in label.of_run(batch.run)["uses"]] == ["nuts"]


def test_batch_of_an_app_without_lots_says_nothing_of_them():
    batch = Bench()
    batch.sets_up()
    assert "uses" not in batch.run
    assert label.of_run(batch.run)["uses"] == []
