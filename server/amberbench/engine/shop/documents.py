"""The shop document, row by row, out of what can be set of it."""

from typing import Any

from ..core.documents import Field, Fields, listed, words
from ..core.field_kinds import choice, document, either, number, record, text, together
from ..physics.fields import COMPOSITION
from . import fields

ID = {"id": words("its id")}
# What the fold makes of a caramel's label, weight and likeness.
MIXED = {
    name: number("", 0, 1, field["meaning"]) if name != "density_kg_m3" else dict(field, nullable=True)
    for name, field in COMPOSITION["fields"].items()
}
MATERIAL = either([fields.CARAMELS["material"], record(MIXED, "its make-up")], "what the engine reckons it with")


def _nested(flat: Fields) -> Fields:
    """Fields by dotted path, as the records that rows of the shop are."""
    nested: dict[str, Any] = {}
    for path in flat:
        at, parts = nested, path.split(".")
        for part in parts[:-1]:
            if part not in at:
                at[part] = {}
            at = at[part]
        at[parts[-1]] = _set(flat[path])
    return _records(nested)


def _records(nested: Any) -> Fields:
    return {
        name: field if "kind" in field and "meaning" in field else record(_records(field), name.replace("_", " "))
        for name, field in nested.items()
    }


def _set(field: Field) -> Field:
    """A field that is null until somebody sets it."""
    return dict(field, nullable=field.get("default") is None or bool(field.get("nullable")))


def _rows(name: str) -> Fields:
    row = together(ID, _nested(fields.LISTS[name]))
    return together(row, {"material": MATERIAL}) if name == "caramels" else row


def _singular(name: str) -> str:
    return ("person" if name == "people" else name[:-2] if name.endswith("xes") else name[:-1]).capitalize() + "Row"


ROWS = {name: _rows(name) for name in fields.LISTS}
DOCUMENTS = {_singular(name): record(ROWS[name], "one of the shop's " + name) for name in ROWS}
DOCUMENTS["ShopList"] = choice(tuple(fields.LISTS), "a list of the shop")
DOCUMENTS["Shop"] = record(
    together(
        {"id": words("the shop; null: there is none", nullable=True)},
        _nested(fields.SHOP),
        {"basis": document("what a value rests on, by shop.<field> or <list>/<id>.<field>", of="BasisByField")},
        {name: listed(document("a row", of=_singular(name)), "its " + name) for name in ROWS},
    ),
    "the fold of all that was set of the shop; what nobody has set is null or stands as assumed",
)
DOCUMENTS["ShopEdit"] = record(
    {
        "doc": text(90, "shop, or <list>/<id>"),
        "field": words("the field, a dotted path inside the row"),
        "value": document("its value; null takes it back", nullable=True),
        "basis": choice(("typed", "measured", "published", "assumed"), "what it rests on"),
    },
    "one field of the shop as the log has it",
)
