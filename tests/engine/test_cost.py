"""Cost to the minor unit, against exact fractions."""

import random
from fractions import Fraction
from math import floor

import pytest

from amberbench.engine import catalogue
from tests import strategies_boxes


def half_up(value):
    return floor(value + Fraction(1, 2))


def exact(amount, unit=1_000_000):
    return Fraction(floor(Fraction(str(amount * unit)) + Fraction(1, 2)), unit)


def priced(uses):
    return [
        use["lot_price_minor"] * exact(use["amount"]) / exact(use["lot_amount"])
        for use in uses
        if use.get("lot_price_minor") is not None
    ]


def shares(request):
    """Each part as an exact fraction of minor units."""
    found = priced(request["uses"])
    if request.get("rate_minor_per_h") is not None and request.get("hands_s"):
        found.append(request["rate_minor_per_h"] * exact(request["hands_s"], 1000) / 3600)
    if request.get("energy_minor_per_kwh") is not None and request.get("energy_j"):
        found.append(exact(request["energy_minor_per_kwh"]) * exact(request["energy_j"], 1) / 3_600_000)
    return found


@pytest.mark.parametrize("seed", range(20))
def test_fifty_batches_cost_what_fractions_say_and_the_parts_add_up(seed):
    rng = random.Random(seed)
    for _ in range(50):
        request = strategies_boxes.cost(rng)
        reply = catalogue.call("cost.batch", request)
        found, whole = shares(request), sum(shares(request), Fraction(0))
        assert reply["total_minor"] == half_up(whole)
        assert sum(part["minor"] for part in reply["parts"]) == reply["total_minor"]
        assert all(abs(part["minor"] - share) < 1 for part, share in zip(reply["parts"], found, strict=True))
        assert reply["waste_minor"] == half_up(whole * exact(request.get("waste_share", 0)))
        if request["pieces"]:
            assert reply["piece_minor"] == half_up(whole / request["pieces"])
            for box, asked in zip(reply["boxes"], request.get("boxes", []), strict=True):
                box_cost = whole * asked["pieces"] / request["pieces"] + sum(priced(asked["packaging"]))
                assert box["minor"] == half_up(box_cost)
                assert 0 <= Fraction(str(box["exact_minor"])) - box_cost < Fraction(1, 900_000)
        else:
            assert reply["piece_minor"] is None


@pytest.mark.parametrize("seed", range(10))
def test_a_hundred_boxes_of_several_products_cost_what_fractions_say_and_the_parts_add_up(seed):
    rng = random.Random(seed)
    for _ in range(100):
        request = strategies_boxes.box(rng)
        reply = catalogue.call("cost.box", request)
        known = [line for line in request["lines"] if line.get("batch", {}).get("pieces")]
        found = [sum(shares(line["batch"])) * Fraction(line["count"], line["batch"]["pieces"]) for line in known]
        found += priced(request["packaging"])
        whole = sum(found, Fraction(0))
        assert reply["total_minor"] == half_up(whole) == sum(part["minor"] for part in reply["parts"])
        assert all(abs(part["minor"] - share) < 1 for part, share in zip(reply["parts"], found, strict=True))
        assert 0 <= Fraction(str(reply["exact_minor"])) - whole < Fraction(1, 900_000)
        assert {line["name"] for line in request["lines"] if line not in known} <= set(reply["not_priced"])


def test_a_box_of_two_products_costs_a_share_of_a_batch_of_each_and_says_which_was_never_counted():
    caramel = {"name": "caramel", "amount": 1, "lot_amount": 1, "lot_price_minor": 1989}
    squares = {"name": "squares", "count": 5, "batch": {"uses": [caramel], "pieces": 180}}
    clusters = {"name": "clusters", "count": 4, "batch": {"uses": [caramel], "pieces": 90}}
    carton = {"name": "carton", "amount": 1, "lot_amount": 100, "lot_price_minor": 3050}
    reply = catalogue.call("cost.box", {"lines": [squares, clusters], "packaging": [carton]})
    # 55.25 and 88.40 of the batches, 30.50 for the carton: 174.15.
    assert (reply["total_minor"], reply["exact_minor"]) == (174, 174.15)
    assert [part["minor"] for part in reply["parts"]] == [55, 88, 31]
    rolls = {"name": "rolls", "count": 1}
    assert catalogue.call("cost.box", {"lines": [squares, rolls]})["not_priced"] == ["rolls"]


def test_what_has_no_price_is_named_and_not_reckoned_as_nothing():
    uses = [{"name": "caramel", "amount": 2, "lot_amount": 10, "lot_price_minor": 5000},
            {"name": "salt", "amount": 0.1, "lot_amount": 1}]  # fmt: skip
    reply = catalogue.call("cost.batch", {"uses": uses, "pieces": 100})
    assert (reply["total_minor"], reply["not_priced"], reply["piece_minor"]) == (1000, ["salt"], 10)


def test_price_of_a_box_reaches_its_margin_of_what_the_box_really_costs():
    # A ninth of 1,989 for 180 pieces is 99.45; rounded to 99, a price of 248 would leave 59.9 %.
    uses = [{"name": "caramel", "amount": 1, "lot_amount": 1, "lot_price_minor": 1989}]
    box = catalogue.call("cost.batch", {"uses": uses, "pieces": 180, "boxes": [{"name": "b", "pieces": 9}]})["boxes"][0]
    assert (box["minor"], box["exact_minor"]) == (99, 99.45)
    assert catalogue.call("cost.price", {"cost_minor": 99.45, "margin_percent": 60})["price_minor"] == 249


def test_packaging_is_added_before_it_is_rounded_and_told_where_it_has_no_price():
    third = {"name": "cups", "amount": 1, "lot_amount": 3, "lot_price_minor": 1}
    asked = {"name": "b", "pieces": 1, "packaging": [third, third, {"name": "lid", "amount": 1, "lot_amount": 1}]}
    reply = catalogue.call("cost.batch", {"uses": [], "pieces": 1, "boxes": [asked]})
    assert (reply["boxes"][0]["minor"], reply["not_priced"]) == (1, ["lid"])


def test_tariff_may_have_parts_of_the_smallest_coin_as_the_shop_takes_it():
    reply = catalogue.call("cost.batch", {"uses": [], "energy_j": 7.2e6, "energy_minor_per_kwh": 28.5, "pieces": 1})
    assert reply["total_minor"] == 57


def test_a_price_reaches_the_wanted_margin_and_says_what_it_leaves():
    for cost in range(1, 400, 7):
        for margin in (0, 35, 65, 66.6):
            for tax in (0, 7, 10):
                price = catalogue.call("cost.price", {"cost_minor": cost, "margin_percent": margin, "tax_percent": tax})
                net = Fraction(price["price_minor"] * 100, 100 + tax)
                assert (net - cost) / net >= Fraction(str(margin)) / 100
    # Cost of goods 350 of a price of 1000 is 35 %: published on teaching sheets of culinary arithmetic (seen).
    left = catalogue.call("cost.price", {"cost_minor": 350, "price_minor": 1000})
    assert (left["margin_minor"], left["margin_percent"]) == (650, 65.0)


def test_months_weigh_batches_by_their_pieces_and_leave_out_what_has_no_price_or_time():
    november = [
        {"month": "2026-11", "planned": 200, "good": 174, "cost_minor": 3480, "hands_s": 3480},
        {"month": "2026-11", "planned": 100, "good": 96},
    ]
    december = [{"month": "2026-12", "planned": 100, "good": 0, "cost_minor": 900, "hands_s": 60}]
    october = [{"month": "2026-10", "planned": 100, "good": 90, "cost_minor": 1000}]
    rows = catalogue.call("cost.months", {"batches": december + november + october})["months"]
    assert [row["month"] for row in rows] == ["2026-10", "2026-11", "2026-12"]
    assert [row["good_share"] for row in rows] == [0.9, 0.9, 0]
    # 1,000 over 90 is 11.111…
    assert [row["piece_minor"] for row in rows] == [11.11, 20, None]
    assert [row["piece_s"] for row in rows] == [None, 20, None]
    assert [row["batches"] for row in rows] == [1, 2, 1]
