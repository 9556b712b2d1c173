"""Requests drawn at random, for every function of the catalogue.

`sensible` draws what a person in a kitchen may ask and should get an answer to; `anywhere` draws every field anywhere
in its accepted range, so that fields may contradict each other; `spoilt` breaks a sensible request in one place. All
three take a `random.Random`, so that hypothesis, the parity suite and a long run draw from the same kitchens.
"""

import copy
from typing import Any

from hypothesis import strategies as st

from amberbench.engine import fields
from amberbench.engine.core import field_kinds
from amberbench.engine.physics import fields as physics_fields
from amberbench.engine.shop import fields as fields_shop
from tests import (
    strategies_batch,
    strategies_batch_order,
    strategies_boxes,
    strategies_chocolate,
    strategies_deposit,
    strategies_labelling,
    strategies_melt,
    strategies_scheduling,
    strategies_streams,
)
from tests.drawing import maybe
from tests.gathered import of_kinds

NAMES = sorted(fields.FUNCTIONS)
JUNK = [
    None, True, False, 0, -1, 1, 1e308, -1e308, 5e-324, float("nan"), float("inf"), float("-inf"), 10**400, "", "fit",
    "x" * 3000, "2.5 lb", "caramel", [], [None], [[]], {}, {"kg": {}}, {"": 0}, [1, "two", None], {"h_w_m2k": -1},
    {"layers": []}, {"water": 2}, {"water": 1, "density_kg_m3": True},
]  # fmt: skip


def _material(rng):
    kind = rng.random()
    if kind < 0.6:
        return "caramel"
    if kind < 0.75:
        return rng.choice(physics_fields.MATERIAL_NAMES)
    if kind < 0.85:
        return {"conductivity_w_mk": rng.uniform(0.1, 0.6), "density_kg_m3": rng.uniform(900, 1600),
                "heat_capacity_j_kgk": rng.uniform(1300, 3000)}  # fmt: skip
    water, fat = rng.uniform(0.05, 0.14), rng.uniform(0.0, 0.2)
    return {"water": water, "fat": fat, "protein": 0.04, "ash": 0.01, "carbohydrate": 0.95 - water - fat,
            "density_kg_m3": rng.choice([None, rng.uniform(1300, 1450)])}  # fmt: skip


def _piece(rng):
    side = rng.uniform(0.015, 0.05)
    request = {"piece_length_m": side, "piece_width_m": rng.choice([side, rng.uniform(0.012, 0.06)])}
    maybe(rng, request, "trim_m", rng.uniform(0, 0.012))
    maybe(rng, request, "kerf_m", rng.uniform(0, 0.002))
    return request


def _bars(rng):
    owned = [0.006, 0.008, 0.0095, 0.010, 0.012, 0.0127, 0.015, 0.019, 0.025]
    return [rng.choice(owned) for _ in range(rng.randrange(1, 7))]


def _pour(rng):
    known = {"mass": "mass_kg", "length": "length_m", "height": "slab_height_m"}
    request = {"length_m": rng.uniform(0.2, 0.5), "width_m": rng.uniform(0.2, 0.4)}
    request["slab_height_m"] = rng.uniform(0.006, 0.025)
    request["mass_kg"] = rng.uniform(0.7, 4.0)
    request["solve_for"] = rng.choice(sorted(known))
    del request[known[request["solve_for"]]]
    maybe(rng, request, "bars_m", _bars(rng))
    maybe(rng, request, "material", _material(rng))
    maybe(rng, request, "residue", rng.uniform(0, 0.05))
    return request


def _cool(rng):
    request = {"thickness_m": rng.uniform(0.006, 0.025), "room_c": rng.uniform(15, 30)}
    maybe(rng, request, "base", rng.choice(physics_fields.BASE_NAMES))
    maybe(rng, request, "top", rng.choice(["still_air", "fan", {"h_w_m2k": rng.uniform(4, 40)}]))
    maybe(rng, request, "bottom", rng.choice(["still_air", "fan", "insulated", {"h_w_m2k": rng.uniform(2, 40)}]))
    maybe(rng, request, "material", _material(rng), 0.3)
    maybe(rng, request, "contact_m2k_w", rng.uniform(0, 0.01), 0.3)
    maybe(rng, request, "start_c", rng.uniform(66, 82), 0.3)
    for name, low, high in (("base_length_m", 0.2, 1.5), ("base_width_m", 0.2, 1.0), ("base_thickness_m", 0.005, 0.05)):
        maybe(rng, request, name, rng.uniform(low, high), 0.4)
    maybe(rng, request, "base_start_c", rng.uniform(5, 30), 0.2)
    maybe(rng, request, "target_c", rng.uniform(20, 32), 0.3)
    maybe(rng, request, "fridge_c", rng.uniform(1, 12), 0.3)
    return request


def _refit(rng):
    request = dict(_cool(rng), readings=[], touches=[])
    at_s, surface_c = 0.0, 70.0
    for _ in range(rng.randrange(4)):
        at_s += rng.uniform(300, 1500)
        surface_c -= rng.uniform(4, 15)
        request["readings"].append({"at_s": at_s, "surface_c": surface_c})
    if rng.random() < 0.4:
        firm = rng.random() < 0.5
        # Nobody finds a slab firm before it can be.
        after_s = rng.uniform(20000, 40000) if firm else rng.uniform(600, 3000)
        request["touches"].append({"at_s": at_s + after_s, "firm": firm})
    return request


def _slab(rng):
    request = dict(
        _piece(rng), slab_height_m=rng.uniform(0.008, 0.016), oven=strategies_melt.oven(rng), room_c=rng.uniform(15, 30)
    )
    frame = rng.random() < 0.3
    if frame:
        request["frame"] = {"length_m": rng.uniform(0.36, 0.5), "width_m": rng.uniform(0.3, 0.4)}
    way = rng.random()
    if way < 0.5:
        request["have"] = {"kg": rng.uniform(0.6, 2.0)}
    elif way < 0.75:
        request["want"] = {"pieces": rng.randrange(15, 18) if frame else rng.randrange(20, 60)}
    else:
        request["want"] = {"boxes": rng.randrange(5, 8), "per_box": 4 if frame else rng.choice([6, 8])}
    if rng.random() < 0.7:
        request["bars_m"] = [0.010, 0.010, 0.012, 0.0127]
    elif rng.random() < 0.5:
        request["bars"] = [{"height_m": height_m, "length_m": rng.choice([None, rng.uniform(0.3, 0.6)]), "count": 4}
                           for height_m in (0.010, 0.012)]  # fmt: skip
    strategies_deposit.sizes_of_things(rng, request)
    maybe(rng, request, "trim_share", rng.uniform(0, 0.3), 0.2)
    maybe(rng, request, "block_kg", rng.uniform(1, 5))
    maybe(rng, request, "base", rng.choice(physics_fields.BASE_NAMES))
    maybe(rng, request, "vessel", {"mass_kg": rng.uniform(0.1, 1.5)})
    maybe(rng, request, "humidity", rng.uniform(0.2, 0.95))
    maybe(rng, request, "firmness", rng.choice(["firm", "borderline", "slumps"]), 0.2)
    maybe(rng, request, "squeeze", rng.choice(["firm", "soft", "brittle"]), 0.2)
    maybe(rng, request, "basis", {"room_c": "measured", "oven.rated_w": "published"}, 0.3)
    if rng.random() < 0.25:
        del request["oven"]
        request["jacket"] = {"water_c": rng.uniform(80, 92)}
        maybe(rng, request["jacket"], "thickness_m", rng.uniform(0.015, 0.03))
        maybe(rng, request["jacket"], "chopped_m", rng.uniform(0.015, 0.06))
    maybe(rng, request, "dip", strategies_chocolate.dip(rng), 0.3)
    return request


def _convert(rng):
    from amberbench.engine.core import units

    unit = rng.choice(sorted(units.UNITS))
    same = [other for other in sorted(units.UNITS) if units.UNITS[other][0] == units.UNITS[unit][0]]
    return {"value": rng.uniform(-1e4, 1e4), "from": unit, "to": rng.choice(same)}


def _fit(rng):
    return dict(
        _piece(rng), pieces=rng.randrange(1, 60), max_length_m=rng.uniform(0.5, 1), max_width_m=rng.uniform(0.3, 0.6)
    )


def _shop_event(rng, seq):
    """An edit of a shop by one of two phones; some make no sense."""
    name = rng.choice(["shop", *sorted(fields_shop.LISTS)])
    known = fields_shop.SHOP if name == "shop" else fields_shop.LISTS[name] | {"removed": fields_shop.REMOVED}
    field = rng.choice([*sorted(known), "a stranger"] if rng.random() < 0.1 else sorted(known))
    value = _within(known[field], rng) if field in known and rng.random() < 0.9 else rng.choice(JUNK[:16])
    doc = name if name == "shop" else f"{name}/{rng.choice('ab')}"
    body = {"doc": doc, "field": field, "value": value, "basis": rng.choice(field_kinds.BASES)}
    return {"id": f"e{seq}", "v": 1, "shop_id": "s", "device_id": rng.choice("ab"), "seq": seq, "batch_id": None,
            "at_ms": rng.randrange(1000), "offset_ms": 0.5, "kind": "shop_set", "body": body}  # fmt: skip


def _shop_fold(rng):
    return {"shop_id": "s", "events": [_shop_event(rng, seq) for seq in range(rng.randrange(30))]}


def _shop_check(rng):
    name = rng.choice(sorted(set(fields_shop.LISTS) - {"caramels", "chocolates"}))
    some = rng.sample(sorted(fields_shop.LISTS[name]), 2)
    values = {one: None if rng.random() < 0.3 or one == "step_s"
              else _within(fields_shop.LISTS[name][one], rng) for one in some}  # fmt: skip
    if values.get("made_of") in fields_shop.METALS:
        values["jacketed"] = True  # metal never goes into an oven
    return {"doc": f"{name}/a", "values": values}


def _learnt(rng):
    batches: list = [strategies_batch.contribution(rng, f"batch-{rng.randrange(40)}") for _ in range(rng.randrange(20))]
    if rng.random() < 0.3:
        batches.insert(rng.randrange(len(batches) + 1), copy.deepcopy(rng.choice(JUNK[:16])))
    return {"batches": batches}


def _learn_apply(rng):
    from amberbench.engine import catalogue

    request = {"measured": catalogue.call("learn.fold", _learnt(rng)), "request": _slab(rng)}
    return request | {"oven_id": rng.choice(["a", "c", None]), "base_id": rng.choice(["a", "c", None])}


SENSIBLE = {
    "units.convert": _convert,
    "materials.properties": lambda rng: {"material": _material(rng), "temp_c": rng.uniform(-40, 150)},
    "materials.heat": lambda rng: {
        "material": _material(rng), "mass_kg": rng.uniform(0, 20), "from_c": rng.uniform(-40, 150),
        "to_c": rng.uniform(-40, 150)},
    "pour.plan": _pour,
    "cut.plan": lambda rng: dict(
        _piece(rng), length_m=rng.uniform(0.1, 0.6), width_m=rng.uniform(0.1, 0.4),
        thickness_m=rng.uniform(0.006, 0.025), material=_material(rng)),
    "cut.fit_frame": _fit,
    "cool.plan": _cool,
    "cool.refit": _refit,
    "slab.plan": _slab,
    "learn.fold": _learnt,
    "learn.apply": _learn_apply,
    "shop.fold": _shop_fold,
    "shop.check": _shop_check,
    "shop.density": lambda rng: {"mass_kg": rng.uniform(1.2, 1.4) * 0.25, "volume_m3": 0.00025},
}  # fmt: skip
for _part in (
    strategies_batch,
    strategies_chocolate,
    strategies_deposit,
    strategies_batch_order,
    strategies_boxes,
    strategies_melt,
    strategies_scheduling,
    strategies_labelling,
    strategies_streams,
):
    SENSIBLE.update(_part.SENSIBLE)
for _own in of_kinds("SENSIBLE"):
    SENSIBLE.update(_own)


def sensible(name: str, rng: Any) -> dict[str, Any]:
    """A request that a person may well make and that should be answered."""
    return SENSIBLE[name](rng)


def anywhere(known: dict[str, Any], rng: Any) -> dict[str, Any]:
    """A request with every field somewhere in its range, defaults sometimes left to themselves."""
    return {name: _within(field, rng) for name, field in known.items() if "default" not in field or rng.random() < 0.6}


def nudged(name: str, rng: Any) -> dict[str, Any]:
    """A sensible request with one to three of its fields moved anywhere in their range."""
    known, request = fields.FUNCTIONS[name]["request"], dict(sensible(name, rng))
    for field in rng.sample(sorted(known), min(len(known), rng.randint(1, 3))):
        if known[field]["kind"] != "document":
            request[field] = _within(known[field], rng)
    return request


def _within(field, rng):
    kind = field["kind"]
    if kind == "number":
        return rng.choice([field["low"], field["high"], rng.uniform(field["low"], field["high"])])
    if kind == "integer":
        return rng.choice([field["low"], field["high"], rng.randint(field["low"], field["high"])])
    if kind == "boolean":
        return rng.random() < 0.5
    if kind == "text":
        return rng.choice(["", "kg", "°C", "ä" * field["most"]])
    if kind == "choice":
        return rng.choice(field["options"])
    if kind == "record":
        return anywhere(field["fields"], rng)
    if kind == "many":
        return [_within(field["item"], rng) for _ in range(rng.randint(field["least"], min(field["most"], 6)))]
    if kind == "either":
        return _within(rng.choice(field["alternatives"]), rng)
    return copy.deepcopy(rng.choice(JUNK[3:]))


def spoilt(name: str, rng: Any) -> Any:
    """A sensible request with one value, at any depth, replaced by junk, taken away or given a stranger beside it.

    A run is the engine's own document: it is replaced as a whole, for what is wrong inside is no mistake of who asks.
    """
    request = copy.deepcopy(sensible(name, rng))
    spot = request
    while True:
        keys = list(spot) if isinstance(spot, dict) else list(range(len(spot)))
        if not keys:
            break
        key = rng.choice(keys)
        if isinstance(spot[key], (dict, list)) and key != "run" and rng.random() < 0.7:
            spot = spot[key]
            continue
        way = rng.random()
        if way < 0.7:
            spot[key] = copy.deepcopy(rng.choice(JUNK))
        elif way < 0.85:
            del spot[key]
        elif isinstance(spot, dict):
            spot["a stranger"] = 1
        break
    return request


def json_like() -> st.SearchStrategy[Any]:
    """Anything JSON can carry, NaN and infinity included, as the bridge and Python's parser let them through."""
    scalars = st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=20) | st.sampled_from(JUNK[3:])
    return st.recursive(
        scalars, lambda inner: st.lists(inner, max_size=4) | st.dictionaries(st.text(max_size=12), inner, max_size=4)
    )
