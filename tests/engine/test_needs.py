"""From open orders to batches and materials, against brute force on small invented shops."""

import itertools
import random
from functools import cache
from math import ceil

import pytest

from amberbench.engine import catalogue
from amberbench.engine.core.problems import Problem
from amberbench.engine.needs.plan import batches
from amberbench.engine.products.cluster import sizes as cluster_sizes
from tests import strategies_boxes
from tests.bench import NINE_OCLOCK_MS, SLAB_REQUEST, Bench, planned_slab
from tests.strategies_deposit import ON_NUTS

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


def test_pieces_in_hand_cover_the_first_order_and_the_next_one_says_by_when():
    orders = [{"order_id": name, "wanted_ms": days * DAY_MS, "lines": [{"product_id": "squares", "missing": 50}]}
              for name, days in (("later", 9), ("first", 1))]  # fmt: skip
    reply = catalogue.call("needs.plan", shop(orders, product={"in_hand": 60}))
    [row] = reply["products"]
    assert (row["wanted"], row["by_ms"], row["order_ids"]) == (40, 9 * DAY_MS, ["later"])
    assert reply["materials"][0]["by_ms"] == 9 * DAY_MS


SQUARE = {"id": "sq", "kind": "slab", "caramel_id": "firm"}
SQUARE |= {name: SLAB_REQUEST[name] for name in ("piece_length_m", "piece_width_m", "slab_height_m")}
NUTS = {"id": "nuts", "kind": "cluster", "caramel_id": "firm", "cluster": {"deposit_kg": 0.012, "second_kg": 0.006}}
LOT = {"lot_id": "L", "material": "caramels/firm", "left": 2.0}


def in_a_shop(orders=(), *batches, **asked):
    """What needs.gather says of a shop with squares and clusters, and what they need."""
    rows = asked.pop("shop", {})
    document = {"products": [SQUARE, NUTS], "caramels": [{"id": "firm", "block_kg": 2.5}],
                "boxes": [{"id": "nine", "lines": [{"product_id": "sq", "count": 9}]}]} | rows  # fmt: skip
    request = {"shop": document, "orders": list(orders), "lots": [LOT], "now_ms": NINE_OCLOCK_MS + 9e7}
    request["batches"] = [{"id": f"b{n}", "plan": one.plan, "run": one.run} for n, one in enumerate(batches)]
    gathered = catalogue.call("needs.gather", request | asked)
    plan = {name: gathered[name] for name in gathered if name not in ("unsized", "unlisted")}
    return {one["product_id"]: one for one in gathered["products"]}, catalogue.call("needs.plan", plan)


def wants(missing, product_id="sq"):
    return {"order_id": "a", "wanted_ms": DAY_MS, "lines": [{"product_id": product_id, "missing": missing}]}


def caramel(reply):
    return next(one for one in reply["materials"] if one["material"] == "caramels/firm")


@pytest.mark.parametrize("pieces", [7, 100, 204, 231, 383])
def test_a_slab_needs_the_caramel_that_its_plan_weighs_in(pieces):
    asked = {name: SLAB_REQUEST[name] for name in SLAB_REQUEST if name not in ("have", "base")}
    plan = catalogue.call("slab.plan", asked | {"want": {"pieces": pieces}})
    bars = [{"height_m": 0.010}, {"height_m": 0.012}]
    _, reply = in_a_shop([wants(pieces)], shop={"bars": bars})
    assert caramel(reply)["wanted"] == pytest.approx(plan["caramel_kg"])
    assert caramel(reply)["short"] == pytest.approx(max(0.0, plan["caramel_kg"] - 2.0))


def test_a_slab_that_leaves_trim_is_short_though_its_pieces_weigh_less_than_the_lot():
    _, reply = in_a_shop([wants(204)], lots=[LOT | {"left": 1.7}])
    assert caramel(reply)["short"] == pytest.approx(0.09, abs=0.005)


@pytest.mark.parametrize("rows", [
    {"vessels": [{"id": "v", "volume_m3": 0.002}]},
    {"tables": [{"id": "t", "max_length_m": 0.42, "max_width_m": 0.30}]},
    {"bases": [{"id": "b", "base": "marble", "length_m": 0.5, "width_m": 0.3}]},
    {"bars": [{"id": "s", "height_m": 0.012, "length_m": 0.4, "count": 4}]},
])  # fmt: skip
def test_the_most_of_a_batch_is_the_most_that_its_plan_takes_at_once(rows):
    products, reply = in_a_shop([wants(1000)], shop=rows)
    most = products["sq"]["batch_pieces"]
    asked = {"oven": SLAB_REQUEST["oven"], "vessel": SLAB_REQUEST["vessel"], "room_c": 21.0}
    request = products["sq"]["asked"]["request"] | asked
    planned = [catalogue.call("slab.plan", request | {"want": {"pieces": n}})["together"] for n in (most, most + 1)]
    assert [one["batches"] for one in planned] == [1, 2]
    assert len(reply["products"][0]["batches"]) == ceil(1000 / most)


@pytest.mark.parametrize("clusters", [40, 150])
def test_clusters_need_the_caramel_that_their_plan_weighs_in(clusters):
    asked = ON_NUTS | {"rows": [{"clusters": clusters, "deposit_kg": 0.012}], "room_c": 21.0, "window_low_c": 65.0}
    plan = catalogue.call("cluster.plan", asked)
    window = {"deposit": {"low_c": 65.0, "high_c": ON_NUTS["window_high_c"]}}
    rows = {"vessels": [{"id": "v", "volume_m3": 0.003}], "caramels": [{"id": "firm", "windows": window}]}
    products, reply = in_a_shop([wants(clusters, "nuts")], shop=rows)
    assert caramel(reply)["wanted"] == pytest.approx(plan["caramel_kg"])
    most = products["nuts"]["batch_pieces"]
    planned = [
        catalogue.call(
            "cluster.plan", asked | {"rows": [{"clusters": n, "deposit_kg": 0.012}], "vessel_volume_m3": 0.003}
        )
        for n in (most, most + 1)
    ]
    assert [one["together"]["batches"] for one in planned] == [1, 2]


def test_a_block_that_holds_so_many_clusters_exactly_holds_the_last_of_them_too():
    asked = {"deposit_kg": 0.0016, "second_kg": 0.0, "residue": 0.0, "window_low_c": 65.0, "window_high_c": 77.0}
    asked |= {"material": "caramel", "vessel_volume_m3": None}
    assert cluster_sizes.most_pieces(asked, 1.2) == 750


def test_a_product_of_which_no_batch_can_be_planned_is_told_and_stops_no_other():
    large = SQUARE | {"id": "large", "piece_length_m": 0.5}
    rows = {"products": [large, SQUARE], "tables": [{"id": "t", "max_length_m": 0.42, "max_width_m": 0.30}]}
    products, reply = in_a_shop([wants(90)], shop=rows)
    assert (list(products), [one["make"] for one in reply["products"]]) == (["sq"], [90])


def made(*kinds, **body):
    """A batch of 204 squares, until it is counted; then what is told besides."""
    bench = Bench(planned_slab() | {"product_id": "sq"})
    for kind in ("ready_checked", "weighed", "poured", "touched", "freed", "flipped", "cut", "counted", *kinds):
        known = {"weighed": {"kg": 1.8, "lot": "A"}, "poured": {"bulk_c": 74.0}, "touched": {"firm": True}}
        known |= {"counted": {"pieces": body.get("pieces", 204)}, "thrown_away": {"reason": "other", "text": "salt"}}
        bench.does(kind, 60, **known.get(kind, {}))
    assert bench.run["pieces"] == body.get("pieces", 204)
    return bench


def boxed(pieces, count, taken_back=0, **packed):
    """Boxes of the first batch."""
    body = {"box_id": "nine", "count": count, "from": [{"batch_id": "b0", "pieces": pieces}]} | packed
    events = [{"kind": "packed", "body": body}, {"kind": "unpacked", "body": {"count": taken_back or 1}}]
    told = [
        one | {"id": str(seq), "seq": seq, "device_id": "a", "at_ms": NINE_OCLOCK_MS + seq, "offset_ms": 0}
        for seq, one in enumerate(events[: 2 if taken_back else 1])
    ]
    return catalogue.call("pack.fold", {"id": "k", "events": told})["document"]


@pytest.mark.parametrize("kinds", [(), ("closed",)])
def test_boxed_pieces_are_in_hand_no_more_whether_their_batch_is_open_or_closed(kinds):
    products, reply = in_a_shop([wants(90)], made(*kinds, pieces=90), packs=[boxed(90, 10)])
    assert (products["sq"]["in_hand"], reply["products"][0]["make"]) == (0, 90)


def test_pieces_of_boxes_taken_back_are_in_hand_again_and_seconds_take_no_good_ones():
    batch = made("closed", pieces=90)
    assert in_a_shop([], batch, packs=[boxed(90, 10, taken_back=4)])[0]["sq"]["in_hand"] == 36
    assert in_a_shop([], batch, packs=[boxed(45, 5, seconds=True)])[0]["sq"]["in_hand"] == 90


def test_a_batch_without_one_good_piece_lowers_the_yield_and_so_does_one_thrown_away():
    good = [made("closed") for _ in range(3)]
    assert in_a_shop([], *good)[0]["sq"]["yield_share"] == 1.0
    assert in_a_shop([], *good, made("closed", pieces=0))[0]["sq"]["yield_share"] == pytest.approx(0.75)
    assert in_a_shop([], *good, made("thrown_away"))[0]["sq"]["yield_share"] == pytest.approx(0.75)
    assert in_a_shop([], made("thrown_away"))[0]["sq"]["in_hand"] == 0


def test_a_planned_batch_keeps_the_caramel_that_it_will_take_until_it_is_weighed_in():
    bench = Bench(planned_slab() | {"product_id": "sq", "caramel_id": "firm"})
    _, reply = in_a_shop([wants(408)], bench)
    caramel_kg = planned_slab()["reply"]["caramel_kg"]
    assert [one["make"] for one in reply["products"]] == [204]
    assert caramel(reply)["wanted"] == pytest.approx(caramel_kg + 1.792, abs=0.001)
    assert (caramel(reply)["short"], caramel(reply)["by_ms"]) == (pytest.approx(1.592, abs=0.001), DAY_MS)
    bench.sets_up()
    assert caramel(in_a_shop([wants(408)], bench)[1])["wanted"] == pytest.approx(1.792, abs=0.001)


def test_a_planned_batch_of_clusters_keeps_its_nuts_until_they_are_noted_or_its_pieces_are_counted():
    reply = catalogue.call("cluster.plan", ON_NUTS | {"room_c": 21.0})
    plan = {"kind": "cluster", "name": "Nuts", "lot": None, "request": ON_NUTS, "reply": reply, "product_id": "nuts"}
    bench = Bench(plan)
    under = NUTS | {"cluster": NUTS["cluster"] | {"under": "pecan", "under_each_kg": 0.0016, "under_count": 4}}
    rows = {"products": [under], "materials": [{"id": "pecan", "name": "Pecan", "what": "under"}]}
    lots = [{"lot_id": "P", "material": "materials/pecan", "left": 1.0}]
    kept = {one["material"]: one["wanted"] for one in in_a_shop([], bench, shop=rows, lots=lots)[1]["materials"]}
    assert kept["materials/pecan"] == pytest.approx(reply["clusters"] * 4 * 0.0016)
    bench.does("ready_checked")
    bench.does("allergens_checked")
    bench.does("under_lot_named", lots=[{"lot_id": "P", "amount": 0.5}])
    then = {one["material"] for one in in_a_shop([], bench, shop=rows, lots=lots)[1]["materials"]}
    assert then == {"caramels/firm"}
