"""The description of every field is itself sound."""

import pytest

from amberbench.engine import fields
from amberbench.engine.core import check, field_kinds, sources

SUFFIXES = {
    "kg": "kg", "m": "m", "m2": "m²", "m3": "m³", "c": "°C", "k": "K", "s": "s", "w": "W", "j": "J", "ms": "ms",
    "m2_s": "m²/s", "j_kgk": "J/(kg K)", "w_mk": "W/(m K)", "kg_m3": "kg/m³", "m2k_w": "m² K/W", "w_m2k": "W/(m² K)",
    "pa_s": "Pa s", "kg_m2": "kg/m²", "kg_s": "kg/s",
}  # fmt: skip


def described(known, path):
    """Every (path, field) below a set of fields."""
    for name, field in known.items():
        yield from _below(f"{path}.{name}", field)


def _below(path, field):
    yield path, field
    if field["kind"] == "record":
        yield from described(field["fields"], path)
    elif field["kind"] == "many":
        yield from _below(f"{path}[]", field["item"])
    elif field["kind"] == "either":
        for alternative in field["alternatives"]:
            yield from _below(path, alternative)


def everything():
    for name, function in fields.FUNCTIONS.items():
        for side in ("request", "reply"):
            yield from described(function[side], f"{name} {side}")
    for kind, known in fields.EVENTS.items():
        yield from described(known, f"event {kind}")


ALL = list(everything())


@pytest.mark.parametrize(("path", "field"), ALL, ids=[path for path, _ in ALL])
def test_a_field_is_sound(path, field):
    assert field["kind"] in check.CHECKS
    assert field["meaning"]
    if field["kind"] in ("number", "integer"):
        assert field["low"] < field["high"]
    if "default" in field and field["default"] is not None:
        check.CHECKS[field["kind"]](field, field["default"], path)
    if "basis" in field:
        assert field["basis"] in field_kinds.BASES
        assert field["source"] in sources.SOURCES
        assert field["basis"] != "published" or field["source"] not in ("practice", "assumed", "memory")
    if field["kind"] == "either":
        assert field["alternatives"]


@pytest.mark.parametrize(("path", "field"), ALL, ids=[path for path, _ in ALL])
def test_a_number_has_the_unit_its_name_says(path, field):
    name = path.split(".")[-1].replace("[]", "").removesuffix("_each")
    if field["kind"] != "number" or name in ("value", "bars", "bottom", "side", "top"):
        return
    endings = [ending for ending in SUFFIXES if f"_{name}".endswith(f"_{ending}")]
    said = SUFFIXES[max(endings, key=len)] if endings else ""
    assert field["unit"] == said, f"{path} is in {field['unit']!r}"


def test_every_default_number_a_plan_uses_has_a_source():
    bare = [
        path
        for path, field in ALL
        if " request." in path
        and field["kind"] == "number"
        and field.get("default") is not None
        and "source" not in field
    ]
    # Fractions a label leaves out, and a base no larger than the slab.
    assert {path.split(".")[-1] for path in bare} <= {"area_ratio", "protein", "fat", "carbohydrate", "fibre", "ash"}
