"""Orders and boxes packed: what is wanted, what is in hand, and what two phones said at once."""

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from tests.conforming import conforms, is_document
from tests.engine.test_lots import event
from tests.strategies_streams import HOUR_MS, MIDNIGHT_MS, NOW_MS, TODAY

FRIDAY_MS = NOW_MS + 96 * HOUR_MS
BOXES = {"box_id": "box-9", "count": 40}
PLACED = {"customer": "Corner bakery", "wanted_ms": FRIDAY_MS, "lines": [BOXES]}


def order(*events, order_id="o1"):
    reply = catalogue.call("order.fold", {"id": order_id, "events": list(events)})
    conforms("order.fold", reply)
    is_document("Order", reply["document"])
    return reply["document"]


def pack(*events, pack_id="k1"):
    reply = catalogue.call("pack.fold", {"id": pack_id, "events": list(events)})
    conforms("pack.fold", reply)
    is_document("Pack", reply["document"])
    return reply["document"]


def placed(order_id="o1", at_ms=NOW_MS, **more):
    return order(event("placed", at_ms, **PLACED | more), order_id=order_id)


def handed(count, seen=0, at_ms=NOW_MS + HOUR_MS, device_id="a", pack_id=None):
    line = {"box_id": "box-9", "count": count, "pack_id": pack_id}
    return event("handed_over", at_ms, device_id, 9, lines=[line], seen=seen)


def seen(orders, packs=()):
    request = {"orders": orders, "packs": list(packs), "now_ms": NOW_MS, "today": TODAY, "today_ms": MIDNIGHT_MS}
    reply = catalogue.call("orders.overview", request)
    conforms("orders.overview", reply)
    return reply


def checked(kind, body, **more):
    request = {"kind": kind, "body": body, "currency": "EUR", "today": TODAY, "now_ms": NOW_MS, "boxes": ["box-9"]}
    name = "pack.check" if kind in ("packed", "unpacked") else "order.check"
    request |= {} if name == "pack.check" else {"today_ms": MIDNIGHT_MS, "products": ["squares"]}
    reply = catalogue.call(name, request | more)
    conforms(name, reply)
    return [one["code"] for one in reply["warnings"]]


def refused(kind, body, **more):
    with pytest.raises(Problem) as caught:
        checked(kind, body, **more)
    return caught.value.code, caught.value.field


def test_order_is_open_until_all_of_it_is_handed_over():
    first = event("placed", **PLACED)
    assert order(first)["state"] == "open"
    assert order(first, handed(15))["state"] == "part"
    assert order(first, handed(15), handed(25, seen=1, at_ms=NOW_MS + 2 * HOUR_MS))["state"] == "handed"


def test_change_changes_what_it_names_alone_and_null_takes_a_member_back():
    first = event("placed", **PLACED | {"price_minor": 36000, "note": "no nuts"})
    later = event("changed", NOW_MS + 5, seq=2, price_minor=None, lines=[BOXES | {"count": 30}])
    document = order(first, later)
    assert (document["price_minor"], document["lines"][0]["count"]) == (None, 30)
    assert (document["note"], document["wanted_ms"], document["placed_ms"]) == ("no nuts", FRIDAY_MS, NOW_MS)


def test_boxing_is_pinned_to_an_hour_and_let_go_again():
    pin = event("boxing_pinned", NOW_MS + HOUR_MS, seq=3) | {"body": {"at_ms": NOW_MS + 9 * HOUR_MS}}
    assert order(event("placed", NOW_MS, **PLACED))["pinned_ms"] is None
    assert order(event("placed", NOW_MS, **PLACED), pin)["pinned_ms"] == NOW_MS + 9 * HOUR_MS
    let_go = event("boxing_pinned", NOW_MS + 2 * HOUR_MS, seq=4)
    assert order(event("placed", NOW_MS, **PLACED), let_go, pin)["pinned_ms"] is None


def test_order_handed_over_on_two_phones_counts_once_and_is_shown():
    twice = [event("placed", **PLACED), handed(40), handed(40, at_ms=NOW_MS + HOUR_MS + 5, device_id="b")]
    document = order(*twice)
    assert (document["state"], sum(one["count"] for one in document["handed"])) == ("handed", 40)
    assert document["differences"] == [{"code": "handed_twice", "event_id": twice[2]["id"]}]
    back = event("undone", NOW_MS + 2 * HOUR_MS, seq=10, event_id=twice[2]["id"])
    assert order(*twice, back)["differences"] == []


def test_two_phones_that_hand_over_different_things_are_both_believed_and_shown():
    document = order(event("placed", **PLACED), handed(20), handed(15, at_ms=NOW_MS + HOUR_MS + 5, device_id="b"))
    assert sum(one["count"] for one in document["handed"]) == 35
    assert [one["code"] for one in document["differences"]] == ["handed_twice"]


def test_more_handed_over_than_wanted_and_a_cancelled_order_handed_over_are_differences():
    assert [one["code"] for one in order(event("placed", **PLACED), handed(41))["differences"]] == ["handed_more"]
    gone = event("cancelled", NOW_MS + 5, seq=2, why="closed")
    document = order(event("placed", **PLACED), gone, handed(40))
    assert (document["state"], document["differences"][0]["code"]) == ("cancelled", "handed_though_cancelled")


@pytest.mark.parametrize(("wanted_kg", "handed_kg"), [(1.0, (0.7, 0.2, 0.1)), (0.3, (0.1, 0.2))])
def test_weights_handed_over_in_parts_add_up(wanted_kg, handed_kg):
    def line(mass_kg):
        return {"product_id": "squares", "mass_kg": mass_kg}

    goes = [event("handed_over", NOW_MS + nth, seq=nth, lines=[line(kg)], seen=nth - 1)
            for nth, kg in enumerate(handed_kg, 1)]  # fmt: skip
    before = order(event("placed", **PLACED | {"lines": [line(wanted_kg)]}), *goes[:-1])
    last = {"lines": [line(handed_kg[-1])], "seen": len(goes) - 1}
    assert checked("handed_over", last, order=before) == []
    document = order(event("placed", **PLACED | {"lines": [line(wanted_kg)]}), *goes)
    assert (document["state"], document["differences"]) == ("handed", [])
    # As one line that is wanted, however it is cut, nothing is missing.
    beside = order(event("placed", **PLACED | {"lines": [line(wanted_kg), {"box_id": "box-9", "count": 1}]}), *goes)
    assert seen([beside])["orders"][0]["lines"][0]["missing"] == 0.0


def test_boxes_in_hand_go_to_the_order_wanted_first_and_what_is_missing_is_to_be_packed():
    boxes = pack(event("packed", box_id="box-9", count=50))
    late = placed("late", wanted_ms=FRIDAY_MS + HOUR_MS)
    reply = seen([late, placed("early")], [boxes])
    assert [(one["order_id"], one["lines"][0]["packed"], one["lines"][0]["missing"]) for one in reply["orders"]] == [
        ("early", 40, 0), ("late", 10, 30),
    ]  # fmt: skip
    assert [one["is_packed"] for one in reply["orders"]] == [True, False]
    assert reply["boxes"] == [{"box_id": "box-9", "wanted": 80, "in_hand": 50, "missing": 30}]


def test_counter_waits_for_customers_seconds_go_to_nobody_and_what_is_over_wants_nothing():
    boxes = pack(event("packed", box_id="box-9", count=20))
    seconds = pack(event("packed", box_id="box-9", count=20, seconds=True), pack_id="k2")
    counter = placed("counter", wanted_ms=NOW_MS, counter=True)
    over = order(event("placed", **PLACED), event("cancelled", NOW_MS + 1, seq=2), order_id="over")
    reply = seen([counter, placed("o1"), over], [boxes, seconds])
    assert [(one["order_id"], one["is_late"], one["lines"][0]["packed"]) for one in reply["orders"]] == [
        ("o1", False, 20), ("counter", False, 0),
    ]  # fmt: skip


def test_packs_lose_what_is_handed_over_of_them_and_below_zero_is_shown():
    boxes = pack(event("packed", box_id="box-9", count=12))
    assert seen([order(event("placed", **PLACED), handed(5, pack_id="k1"))], [boxes])["packs"] == [
        {"pack_id": "k1", "left": 7}
    ]
    first = order(event("placed", **PLACED), handed(12, pack_id="k1"))
    other = order(event("placed", **PLACED), handed(3, pack_id="k1"), order_id="o2")
    assert seen([first, other], [boxes])["packs"] == [{"pack_id": "k1", "left": -3}]


def test_boxes_handed_over_of_no_pack_are_of_the_oldest_packed_by_then_and_in_hand_no_more():
    first, second, later = (
        pack(event("packed", NOW_MS + after * HOUR_MS, box_id="box-9", count=10), pack_id=name)
        for name, after in (("k1", -2), ("k2", -1), ("k3", 3))
    )
    gone = order(event("placed", **PLACED), handed(12), order_id="o1")
    reply = seen([gone], [first, second, later])
    assert reply["packs"] == [{"pack_id": "k2", "left": 8}, {"pack_id": "k3", "left": 10}]
    assert reply["boxes"] == [{"box_id": "box-9", "wanted": 28, "in_hand": 18, "missing": 10}]
    # What is still to be packed for somebody else is not what was handed over already.
    gone = order(event("placed", **PLACED | {"lines": [BOXES | {"count": 10}]}), handed(10), order_id="o1")
    reply = seen([gone, placed("o2", lines=[BOXES | {"count": 10}])], [first])
    assert (reply["boxes"][0]["in_hand"], reply["boxes"][0]["missing"]) == (0, 10)


def test_boxes_go_to_no_order_that_is_wanted_after_their_best_by():
    def of_day(best_by, name):
        return pack(event("packed", box_id="box-9", count=10, best_by=best_by), pack_id=name)

    [over] = seen([placed()], [of_day("2020-01-01", "k1")])["boxes"]
    assert (over["in_hand"], over["missing"]) == (0, 40)
    # The first order takes what ends first; the last hour of the day is still good, the next midnight is not.
    days = [of_day(TODAY, "k1"), of_day("2199-12-31", "k2")]
    ten = [BOXES | {"count": 10}]
    evening, night = MIDNIGHT_MS + 23.9 * HOUR_MS, MIDNIGHT_MS + 24 * HOUR_MS
    reply = seen([placed("o1", wanted_ms=evening, lines=ten), placed("o2", wanted_ms=night, lines=ten)], days)
    assert [one["is_packed"] for one in reply["orders"]] == [True, True]
    reply = seen([placed("o1", wanted_ms=night, lines=ten), placed("o2", wanted_ms=night, lines=ten)], days)
    assert [one["is_packed"] for one in reply["orders"]] == [True, False]
    assert reply["boxes"][0]["in_hand"] == 20


def test_packed_box_taken_back_is_none_any_more():
    boxes = pack(event("packed", box_id="box-9", count=12), event("unpacked", NOW_MS + 5, seq=2, count=2, why="dented"))
    assert (boxes["count"], boxes["packed"]) == (10, 12)
    assert refused("unpacked", {"count": 11}, pack=boxes) == ("more_than_in_hand", "count")
    assert checked("unpacked", {"count": 10}, pack=boxes) == []


def test_boxes_keep_what_they_were_packed_from_their_weights_and_their_labels():
    packed = {"box_id": "box-9", "count": 12, "from": [{"batch_id": "b1", "pieces": 108}], "code": "25328A"}
    boxes = pack(event("packed", **packed), event("net_weighed", NOW_MS + 1, seq=2, net_kg=0.123),
                 event("labels_printed", NOW_MS + 2, seq=3, n=12))  # fmt: skip
    assert (boxes["net_kg"], boxes["printed"], boxes["from"], boxes["code"]) == (
        [0.123], 12, packed["from"], "25328A",
    )  # fmt: skip


def test_best_by_before_made_on_is_refused():
    days = {"made_on": "2025-11-24", "best_by": "2025-11-23"}
    assert refused("packed", {"box_id": "box-9", "count": 1} | days) == ("best_by_before_made", "best_by")
    assert refused("packed", {"box_id": "gone", "count": 1}) == ("not_in_shop", "box_id")


@pytest.mark.parametrize(
    ("change", "problem"),
    [
        ({"lines": [{"box_id": "box-9", "count": 0}]}, ("too_low", "lines[0].count")),
        ({"lines": []}, ("too_few", "lines")),
        ({"lines": [{"box_id": "gone", "count": 1}]}, ("not_in_shop", "lines[0].box_id")),
        ({"lines": [{"product_id": "gone", "mass_kg": 1}]}, ("not_in_shop", "lines[0].product_id")),
        ({"lines": [{"count": 1}]}, ("give_one_of", "lines[0]")),
        ({"lines": [{"box_id": "box-9"}]}, ("give_one_of", "lines[0]")),
        ({"lines": [{"box_id": "box-9", "mass_kg": 1}]}, ("give_one_of", "lines[0]")),
        ({"wanted_ms": MIDNIGHT_MS - 1}, ("wanted_before_today", "wanted_ms")),
        ({"price_minor": -5}, ("too_low", "price_minor")),
        ({"price_minor": 5, "currency": "USD"}, ("other_currency", "currency")),
    ],
)
def test_order_that_makes_no_sense_is_refused_by_its_field(change, problem):
    assert refused("placed", PLACED | change) == problem


def test_large_order_and_a_late_hour_are_asked_once_more_and_taken():
    assert checked("placed", PLACED) == []
    assert checked("placed", PLACED | {"lines": [{"box_id": "box-9", "count": 10_000}]}) == ["large_order"]
    loose = [{"product_id": "squares", "mass_kg": 250}]
    assert checked("placed", PLACED | {"lines": loose}) == ["large_order_by_weight"]
    assert checked("placed", PLACED | {"wanted_ms": MIDNIGHT_MS}) == ["already_late"]
    assert checked("handed_over", {"lines": [{"box_id": "box-9", "count": 41}]}, order=placed()) == ["more_than_wanted"]


def test_order_that_is_over_is_changed_no_more():
    over = order(event("placed", **PLACED), handed(40))
    assert refused("changed", {"note": "x"}, order=over) == ("already_over", "kind")


SALTED = {"box_id": "nine", "lines": [{"product_id": "salted", "count": 9}]}
MIXED = {"box_id": "mixed", "lines": [{"product_id": "salted", "count": 4}, {"product_id": "cluster", "count": 5}]}
COUNTED = {"batch_id": "b1", "product_id": "salted", "good": 174}


def filled(*packs, boxes=(SALTED,), batches=(COUNTED,), **more):
    request = {"batches": list(batches), "packs": list(packs), "boxes": list(boxes)} | more
    return catalogue.call("pack.boxes", request)


def test_counted_batch_fills_boxes_and_says_what_stays_loose():
    assert filled()["boxes"] == [{"box_id": "nine", "count": 19, "loose": 3}]
    assert filled(boxes=[{"box_id": "other", "lines": [{"product_id": "cluster", "count": 9}]}])["boxes"] == []


def test_pieces_in_boxes_are_no_more_to_be_packed_and_those_of_a_box_taken_back_are():
    made = {"box_id": "nine", "from": [{"batch_id": "b1", "pieces": 90}], "count": 10}
    boxes = pack(event("packed", **made), event("unpacked", NOW_MS + 5, seq=2, count=2, why="dented"))
    assert filled(boxes)["left"] == [{"batch_id": "b1", "pieces": 174 - 72}]
    assert filled(pack(event("packed", **made, seconds=True)))["left"] == [{"batch_id": "b1", "pieces": 174}]


def test_more_boxes_than_pieces_are_said_to_be_short_and_packed_all_the_same_leave_a_difference():
    reply = filled(box_id="nine", count=20)
    assert (reply["from"], reply["short"]) == ([{"batch_id": "b1", "pieces": 180}], 6)
    boxes = pack(event("packed", **{"box_id": "nine", "from": reply["from"], "count": 20}))
    assert filled(boxes)["left"] == [{"batch_id": "b1", "pieces": -6}]
    assert filled(box_id="nine", count=20, seconds=True)["short"] == 0


def test_assorted_box_takes_of_other_batches_what_the_first_has_not():
    clusters = {"batch_id": "b2", "product_id": "cluster", "good": 26}
    reply = filled(boxes=[MIXED, SALTED], batches=[COUNTED, clusters], box_id="mixed", count=5)
    assert {row["box_id"]: row["count"] for row in reply["boxes"]} == {"nine": 19, "mixed": 5}
    assert reply["from"] == [{"batch_id": "b1", "pieces": 20}, {"batch_id": "b2", "pieces": 25}]


def test_a_box_taken_back_sets_its_pieces_free_whole_though_they_are_of_two_batches():
    made = {"box_id": "nine", "from": [{"batch_id": "b1", "pieces": 5}, {"batch_id": "b2", "pieces": 13}], "count": 2}
    boxes = pack(event("packed", **made), event("unpacked", NOW_MS + 5, seq=2, count=1, why="dented"))
    counted = [dict(COUNTED, good=5), dict(COUNTED, batch_id="b2", good=13)]
    assert sum(one["pieces"] for one in filled(boxes, batches=counted)["left"]) == 9


def test_two_lines_of_one_product_take_its_pieces_once():
    twice = {"box_id": "nine", "lines": [{"product_id": "salted", "count": 4}, {"product_id": "salted", "count": 5}]}
    reply = filled(boxes=[twice], batches=[dict(COUNTED, good=18)], box_id="nine", count=3)
    assert reply["boxes"] == [{"box_id": "nine", "count": 2, "loose": 0}]
    assert (reply["from"], reply["short"]) == ([{"batch_id": "b1", "pieces": 27}], 9)


def test_boxes_are_packed_in_lots_in_their_order():
    carton = dict(SALTED, packaging=[{"material": "materials/carton", "amount": 1}])
    lots = [{"lot_id": name, "material": "materials/carton", "left": left} for name, left in (("old", 7), ("new", 100))]
    reply = filled(boxes=[carton], stock=lots, box_id="nine", count=19)
    assert reply["lots"] == [{"lot_id": "old", "amount": 7}, {"lot_id": "new", "amount": 12}]


def test_net_weight_ten_times_off_is_asked_again():
    request = {"kind": "net_weighed", "currency": "EUR", "today": TODAY, "now_ms": NOW_MS, "label_kg": 0.065}

    def said(net_kg):
        return [one["code"] for one in catalogue.call("pack.check", request | {"body": {"net_kg": net_kg}})["warnings"]]

    assert (said(0.65), said(0.0065), said(0.061)) == (["net_far_off"], ["net_far_off"], [])
