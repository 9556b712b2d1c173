"""What a piece of the invented shop's products takes of each material, as needs reckon it."""

import json
from typing import Any

import pytest

from amberbench.config import demo_shop_file
from amberbench.engine import catalogue
from amberbench.services import initial_shop_events

DAY_MS = 86_400_000


def shop_document(**changed: dict[str, Any]) -> dict[str, Any]:
    """The invented shop's document with fields of some rows changed: {"products/a": {"finish": "plain"}}."""
    edits = initial_shop_events.of_seed(json.loads(demo_shop_file().read_text(encoding="utf-8")))
    edits += [
        {"doc": doc, "field": field, "value": value, "basis": "typed"}
        for doc, fields in changed.items()
        for field, value in fields.items()
    ]
    same = {
        "v": 1,
        "shop_id": "s",
        "device_id": "seed",
        "at_ms": 0,
        "offset_ms": 0,
        "stream": "shop/s",
        "batch_id": None,
    }
    events = [same | {"id": str(n), "seq": n, "kind": "shop_set", "body": body} for n, body in enumerate(edits)]
    document: dict[str, Any] = catalogue.call("shop.fold", {"shop_id": "s", "events": events})["shop"]
    return document


def gathered(shop: dict[str, Any]) -> dict[str, Any]:
    asked = {"shop": shop, "orders": [], "lots": [], "batches": [], "packs": [], "now_ms": DAY_MS}
    reply: dict[str, Any] = catalogue.call("needs.gather", asked)
    return reply


def taken(shop: dict[str, Any], product_id: str) -> tuple[dict[str, float], list[str]]:
    reply = gathered(shop)
    product = next(one for one in reply["products"] if one["product_id"] == product_id)
    unlisted = [one["what"] for one in reply["unlisted"] if one["product_id"] == product_id]
    return {one["material"]: one["amount"] for one in product["per_piece"]}, unlisted


def test_a_dipped_square_takes_caramel_chocolate_and_salt():
    parts, unlisted = taken(shop_document(), "square-salted-20")
    assert unlisted == []
    assert set(parts) == {"caramels/caramel-firm", "chocolates/chocolate-dark", "materials/salt"}
    assert parts["materials/salt"] == 0.00015
    # The plan of a slab of such squares says how much chocolate goes on, and what drips off.
    size = {"length_m": 0.02, "width_m": 0.02, "height_m": 0.01}
    coated = catalogue.call("chocolate.coating", {"pieces": 1, "piece": size, "prebottom_m": 0.0005})
    chocolate_kg = coated["coating_kg"] + coated["prebottom_kg"] + coated["drip_kg"]
    assert parts["chocolates/chocolate-dark"] == pytest.approx(chocolate_kg)


def test_a_thin_coat_below_takes_chocolate_though_nothing_is_dipped():
    parts, _ = taken(shop_document(), "square-24")
    # 24 × 24 × 0.5 mm of chocolate: 0.288 ml, at 1.23 to 1.33 g/ml.
    assert 0.00035 < parts["chocolates/chocolate-dark"] < 0.00039


def test_a_cluster_takes_its_nuts_by_their_row_in_stock():
    parts, unlisted = taken(shop_document(), "cluster-pecan")
    assert parts == {"caramels/caramel-firm": pytest.approx(0.014), "materials/pecan": pytest.approx(0.0045)}
    assert unlisted == []


def test_what_is_bought_by_the_piece_is_taken_by_the_piece():
    shop = shop_document(**{"materials/pecan": {"unit": "each"}, "materials/salt": {"unit": "each"}})
    row = next(one for one in shop["products"] if one["id"] == "cluster-pecan")
    count = row["cluster"]["under_count"] or 3
    parts, _ = taken(shop, "cluster-pecan")
    assert parts["materials/pecan"] == count
    # How many pieces of salt lie on a square nobody has said.
    parts, unlisted = taken(shop, "square-salted-20")
    assert "materials/salt" not in parts
    assert unlisted == ["salt"]


def test_what_no_row_of_the_shop_names_is_told_and_left_out():
    _, unlisted = taken(shop_document(), "cluster-pretzel")
    assert unlisted == ["under"]
    pretzels = {"name": "Salted pretzels", "what": "under", "contains": ["wheat"]}
    nuts = {"name": "Peanuts", "what": "under", "contains": ["peanuts"]}
    parts, unlisted = taken(shop_document(**{"materials/p": pretzels, "materials/n": nuts}), "cluster-pretzel")
    assert (parts["materials/p"], parts["materials/n"]) == (pytest.approx(0.0036), pytest.approx(0.0012))
    assert unlisted == []
    assert taken(shop_document(**{"materials/salt": {"removed": True}}), "square-salted-20")[1] == ["salt"]
    unweighed = shop_document(**{"products/cluster-pretzel": {"coating.pickup_share": None}})
    assert taken(unweighed, "cluster-pretzel")[1] == ["under", "chocolate"]


def test_pieces_loose_by_weight_are_counted_by_what_a_finished_piece_weighs():
    product = next(one for one in gathered(shop_document())["products"] if one["product_id"] == "cluster-pecan")
    assert product["piece_kg"] == pytest.approx(0.014 + 0.0045)
    # A batch is as large as its caramel: two thirds of the largest bowl, 5 l.
    assert product["batch_pieces"] > 100


def test_boxes_chocolate_and_salt_are_short_by_the_hour_of_the_first_order_they_lack():
    shop = shop_document()
    line = {"box_id": "nine-squares", "product_id": None, "missing": 20}
    asked = {
        "shop": shop,
        "orders": [{"order_id": "a", "wanted_ms": 3 * DAY_MS, "lines": [line]}],
        "lots": [{"lot_id": "boxes", "material": "materials/box-9", "left": 12}],
        "batches": [],
        "now_ms": DAY_MS,
    }
    reply = catalogue.call("needs.gather", asked)
    del reply["unsized"], reply["unlisted"]
    found = {one["material"]: one for one in catalogue.call("needs.plan", reply)["materials"]}
    assert set(found) == {
        "caramels/caramel-firm", "chocolates/chocolate-dark", "materials/salt", "materials/box-9"
    }  # fmt: skip
    assert (found["materials/box-9"]["wanted"], found["materials/box-9"]["short"]) == (20, 8)
    assert found["materials/salt"]["short"] == pytest.approx(180 * 0.00015)
    assert {one["by_ms"] for one in found.values()} == {3 * DAY_MS}
