"""From open orders to batches and materials, against brute force on small invented shops."""

import itertools
import random
from functools import cache
from math import ceil

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.needs.plan import batches
from tests import strategies_boxes

DAY_MS = 86_400_000


@cache
def fewest(make, most):
    """The fewest batches of 1 to `most` pieces that are exactly so many, tried out."""
    return 0 if make == 0 else 1 + min(fewest(make - size, most) for size in range(1, min(most, make) + 1))


def test_batches_are_as_few_as_brute_force_finds_and_leave_nothing_over():
    for make in range(1, 40):
        for most in range(1, 16):
            for block in (None, 3, 7):
                sizes = batches(make, most, block)
                assert (len(sizes), sum(sizes)) == (fewest(make, most), make)
                assert max(sizes) <= most


def test_batches_are_of_whole_blocks_where_that_takes_no_batch_more():
    assert batches(100, 64, 30) == [60, 40]
    assert batches(120, 64, 30) == [60, 60]
    assert batches(128, 64, 30) == [64, 64]


def naive(request):
    """Pieces to make by product, and what each lot gives, a thousandth at a time."""
    boxes = {box["box_id"]: box for box in request["boxes"]}
    products = {product["product_id"]: product for product in request["products"]}
    wanted, packaging = {}, []
    for order in request["orders"]:
        for line in order["lines"]:
            by_ms = order.get("wanted_ms", float("inf"))
            if line.get("box_id"):
                for part in boxes[line["box_id"]]["contents"]:
                    wanted.setdefault(part["product_id"], []).append((part["count"] * line["missing"], by_ms))
                for part in boxes[line["box_id"]].get("packaging", []):
                    packaging.append((by_ms, part["material"], part["amount"] * line["missing"]))
            elif line.get("mass_kg"):
                pieces = ceil(line["mass_kg"] / products[line["product_id"]]["piece_kg"])
                wanted.setdefault(line["product_id"], []).append((pieces, by_ms))
            else:
                wanted.setdefault(line["product_id"], []).append((line["missing"], by_ms))
    make = {}
    for name, rows in wanted.items():
        good = max(0, sum(pieces for pieces, _ in rows) - products[name].get("in_hand", 0))
        make[name] = ceil(good / products[name].get("yield_share", 1) - 1e-9)
    return make, packaging


@pytest.mark.parametrize("seed", range(40))
def test_small_shops_need_what_a_naive_sum_says(seed):
    rng = random.Random(seed)
    for _ in range(25):
        request = strategies_boxes.needs(rng)
        reply = catalogue.call("needs.plan", request)
        make, packaging = naive(request)
        assert {row["product_id"]: row["make"] for row in reply["products"]} == {k: n for k, n in make.items() if n}
        for row in reply["products"]:
            most = next(one["batch_pieces"] for one in request["products"] if one["product_id"] == row["product_id"])
            sizes = [batch["pieces"] for batch in row["batches"]]
            assert (len(sizes), sum(sizes)) == (ceil(row["make"] / most), row["make"])
        for row in reply["materials"]:
            lots = [lot for lot in request["lots"] if lot["material"] == row["material"] and not lot["is_past"]]
            given = {one["lot_id"]: one["amount"] for one in row["from"]}
            assert sum(given.values()) + row["short"] == pytest.approx(row["wanted"])
            full = [lot for lot in lots if lot["left"] > 0]
            # Oldest first: a lot gives nothing while an older one has some left, and nothing is short while one has.
            for older, younger in itertools.pairwise(full):
                if given.get(younger["lot_id"], 0) > 1e-9:
                    assert given[older["lot_id"]] == pytest.approx(older["left"])
            if row["short"] > 1e-6:
                assert sum(given.values()) == pytest.approx(sum(lot["left"] for lot in full))
        cartons = sum(amount for _, material, amount in packaging if material == "carton")
        assert sum(row["wanted"] for row in reply["materials"] if row["material"] == "carton") == cartons


def shop(orders, **more):
    squares = {"product_id": "squares", "piece_kg": 0.012, "batch_pieces": 150,
               "per_piece": [{"material": "caramel", "amount": 0.012}]}  # fmt: skip
    boxes = [{"box_id": "of 9", "contents": [{"product_id": "squares", "count": 9}]}]
    return {"orders": orders, "boxes": boxes, "products": [squares | more.pop("product", {})], **more}


def test_an_order_too_large_for_one_slab_becomes_several_batches():
    order = {"order_id": "corner bakery", "wanted_ms": DAY_MS, "lines": [{"box_id": "of 9", "missing": 40}]}
    row = catalogue.call("needs.plan", shop([order], product={"yield_share": 0.9}))["products"][0]
    assert (row["wanted"], row["make"], [one["pieces"] for one in row["batches"]]) == (360, 400, [150, 150, 100])
    assert (row["by_ms"], row["order_ids"]) == (DAY_MS, ["corner bakery"])


def test_the_first_order_takes_the_oldest_lot_and_the_rest_is_bought_by_its_hour():
    orders = [
        {"order_id": "late", "wanted_ms": 3 * DAY_MS, "lines": [{"product_id": "rolls", "missing": 100}]},
        {"order_id": "soon", "wanted_ms": DAY_MS, "lines": [{"box_id": "of 9", "missing": 10}]},
    ]
    request = shop(orders, lots=[{"lot_id": "old", "material": "caramel", "left": 1.0},
                                 {"lot_id": "new", "material": "caramel", "left": 0.5}])  # fmt: skip
    request["products"].append({"product_id": "rolls", "piece_kg": 0.01, "batch_pieces": 90,
                                "per_piece": [{"material": "caramel", "amount": 0.01}]})  # fmt: skip
    caramel = catalogue.call("needs.plan", request)["materials"][0]
    assert [one["lot_id"] for one in caramel["from"]] == ["old", "new"]
    assert caramel["wanted"] == pytest.approx(90 * 0.012 + 100 * 0.01)
    assert caramel["short"] == pytest.approx(90 * 0.012 + 100 * 0.01 - 1.5)
    assert caramel["by_ms"] == 3 * DAY_MS


def test_a_box_that_is_gone_is_told_and_stops_no_other_order():
    orders = [{"order_id": "a", "lines": [{"box_id": "gone", "missing": 5}, {"box_id": "of 9", "missing": 1}]}]
    reply = catalogue.call("needs.plan", shop(orders))
    assert reply["unknown"] == [{"order_id": "a", "id": "gone"}]
    assert reply["products"][0]["wanted"] == 9


def test_a_slip_of_the_finger_is_refused_by_its_number_of_batches():
    order = {"order_id": "a", "lines": [{"box_id": "of 9", "missing": 900_000}]}
    with pytest.raises(Problem) as refused:
        catalogue.call("needs.plan", shop([order]))
    assert refused.value.code == "too_many_batches"
