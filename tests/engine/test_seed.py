"""The demonstration shop is invented, complete and fit to plan with."""

import json
import re
from pathlib import Path

import pytest

from amberbench import text
from amberbench.engine import catalogue
from amberbench.engine.core import sources
from amberbench.engine.core.field_kinds import BASES
from amberbench.engine.shop import fields as fields_shop
from amberbench.engine.shop import fold
from amberbench.services import initial_shop_events

SEED = json.loads((Path(__file__).parents[2] / "seed_data/demo_shop.json").read_text(encoding="utf-8"))
ROWS = [(f"{doc}.{field}", row) for doc, rows in SEED["docs"].items() for field, row in rows.items()]
FIGURES = [(path, row) for path, row in ROWS if type(row["value"]) in (int, float)]


def folded(language="en"):
    events = [
        {"id": str(seq), "v": 1, "shop_id": SEED["id"], "device_id": "seed", "seq": seq, "at_ms": 0, "offset_ms": 0,
         "kind": fold.KIND, "body": body} for seq, body in enumerate(initial_shop_events.of_seed(SEED, language))
    ]  # fmt: skip
    reply = catalogue.call("shop.fold", {"events": events})
    assert reply["ignored"] == []
    return reply["shop"]


SHOP = folded()


def test_it_says_that_it_is_invented():
    assert SHOP["invented"] is True
    assert "invented" in SEED["about"].lower()
    assert "invented" in SHOP["name"].lower()


def words(shop):
    """Every word of a shop that a person named."""
    named = [shop["name"], *(row["name"] for name in fields_shop.LISTS for row in shop[name] if "name" in row)]
    return named + [row["coating"]["salt"] for row in shop["products"] if row["coating"].get("salt")]


def test_in_spanish_it_is_the_same_shop_with_every_word_in_spanish():
    spanish = folded("es")
    assert len(words(spanish)) == len(words(SHOP)) > 20
    assert not set(words(spanish)) & set(words(SHOP))
    assert "inventada" in spanish["name"]
    assert [row["rated_w"] for row in spanish["ovens"]] == [row["rated_w"] for row in SHOP["ovens"]]


def test_it_speaks_to_nobody_in_a_language_of_its_own():
    """Each phone reads in its own language until somebody chooses one for the shop."""
    assert [folded(one)["basis"].get("shop.language") for one in ("en", "es")] == [None, None]


def test_a_variant_has_its_own_words_and_else_those_of_its_language():
    spanish = words(folded("es"))
    assert words(folded("es-MX")) != spanish
    assert [text.varied(one, "es-MX") for one in words(folded("es-MX"))] == words(folded("es-MX"))
    assert len(set(words(folded("es-MX"))) & set(spanish)) > 15


def test_it_has_something_in_every_list_a_slab_needs():
    assert [name for name in fields_shop.LISTS if not SHOP[name]] == ["frames"]


@pytest.mark.parametrize(("path", "row"), FIGURES)
def test_a_figure_has_a_known_basis_and_source_and_the_unit_of_its_name(path, row):
    assert row["basis"] in BASES
    assert row["source"] in sources.SOURCES
    ending = re.search(r"_(kg|kg_m2|m|m3|c|s|w|j_kgk|m2k_w)$", path)
    units = {
        "kg": "kg",
        "kg_m2": "kg/m²",
        "m": "m",
        "m3": "m³",
        "c": "°C",
        "s": "s",
        "w": "W",
        "j_kgk": "J/(kg K)",
        "m2k_w": "m² K/W",
    }
    assert row["unit"] == (units[ending[1]] if ending else "")


def slab_request(product, oven, vessel, base):
    """What the plan screen asks for a product of the shop."""
    caramel = next(one for one in SHOP["caramels"] if one["id"] == product["caramel_id"])
    sizes = ("piece_length_m", "piece_width_m", "slab_height_m", "trim_m", "kerf_m")
    if vessel["jacketed"]:
        heat = {"jacket": {"water_c": vessel["water_c"]}}
    else:
        heat = {
            "oven": {"rated_w": oven["rated_w"], "turntable": oven["turntable"], "unevenness": oven["unevenness"]},
            "step_s": oven["step_s"],
            "vessel": {"mass_kg": vessel["mass_kg"], "heat_capacity_j_kgk": vessel["heat_capacity_j_kgk"]},
        }
    return heat | {name: product[name] for name in sizes} | {
        "have": {"kg": 1.8},
        "bars_m": [bar["height_m"] for bar in SHOP["bars"] for _ in range(bar["count"] // 4)],
        "max_length_m": SHOP["tables"][0]["max_length_m"],
        "max_width_m": SHOP["tables"][0]["max_width_m"],
        "base": base["base"], "contact_m2k_w": base["contact_m2k_w"], "bottom": base["bottom"],
        "room_c": SHOP["room_c"], "material": caramel["material"], "block_kg": caramel["block_kg"],
        "windows": caramel["windows"]["slab"] | {name: caramel[name] for name in ("limit_c", "warn_c", "stop_c")},
    }  # fmt: skip


SLABS = [one for one in SHOP["products"] if one["kind"] == "slab"]
CLUSTERS = [one for one in SHOP["products"] if one["kind"] == "cluster"]


@pytest.mark.parametrize("product", SLABS, ids=lambda one: one["id"])
@pytest.mark.parametrize("oven", SHOP["ovens"], ids=lambda one: one["id"])
@pytest.mark.parametrize("vessel", SHOP["vessels"], ids=lambda one: one["id"])
@pytest.mark.parametrize("base", SHOP["bases"], ids=lambda one: one["id"])
def test_every_product_can_be_planned_with_every_oven_vessel_and_base(product, oven, vessel, base):
    reply = catalogue.call("slab.plan", slab_request(product, oven, vessel, base))
    assert reply["warnings"] == []
    assert reply["pour"]["bar_height_m"] == pytest.approx(product["slab_height_m"])
    assert reply["cut"]["pieces"] > 50


def test_every_product_is_made_of_a_caramel_of_the_shop():
    assert {one["caramel_id"] for one in SHOP["products"]} <= {one["id"] for one in SHOP["caramels"]}


def cluster_request(product, oven):
    """What the plan screen asks for clusters of the shop (pwa/src/products/cluster/clusterForm.ts)."""
    caramel = next(one for one in SHOP["caramels"] if one["id"] == product["caramel_id"])
    sizes, tray, funnel = product["cluster"], SHOP["trays"][0], SHOP["funnels"][0]
    kinds = [
        {"material": sizes[name], "kg_each": sizes[f"{name}_each_kg"], "count": sizes[f"{name}_count"]}
        for name in ("under", "also")
        if sizes[name] is not None
    ]
    all_kg = sum(one["kg_each"] * one["count"] for one in kinds)
    mix = [{"material": one["material"], "share": one["kg_each"] * one["count"] / all_kg} for one in kinds]
    bed = {"bed": {"bed_kg_m2": sizes["bed_kg_m2"], "materials": mix}}
    return ({"under": kinds} if sizes["bed_kg_m2"] is None else bed) | {
        "rows": [{"clusters": 60, "deposit_kg": sizes["deposit_kg"]}], "second_kg": sizes["second_kg"],
        "spread_m": sizes["spread_m"], "gap_m": sizes["gap_m"], "material": caramel["material"],
        "tray": {name: tray[name] for name in ("length_m", "width_m", "rim_m")},
        "funnel": {name: funnel[name] for name in ("volume_m3", "fill")},
        "deposits_per_min": funnel["deposits_per_min"], "block_kg": caramel["block_kg"],
        "oven": {name: oven[name] for name in ("rated_w", "turntable")}, "step_s": oven["step_s"],
        "window_low_c": caramel["windows"]["deposit"]["low_c"],
        "window_high_c": caramel["windows"]["deposit"]["high_c"],
    } | {name: caramel[name] for name in ("limit_c", "warn_c", "stop_c")}  # fmt: skip


@pytest.mark.parametrize("product", CLUSTERS, ids=lambda one: one["id"])
@pytest.mark.parametrize("oven", SHOP["ovens"], ids=lambda one: one["id"])
def test_every_kind_of_clusters_can_be_planned_with_every_oven(product, oven):
    reply = catalogue.call("cluster.plan", cluster_request(product, oven))
    assert reply["clusters"] == 60
    assert 1 <= reply["trays"] <= 4
    assert reply["fill_s"] > 120
    assert (reply["second"] is None) == (product["cluster"]["second_kg"] == 0)
