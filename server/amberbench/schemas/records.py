"""One name for every record of the engine's fields, shared by the OpenAPI document and the phone's types."""

from collections.abc import Iterator
from typing import Any

from amberbench.engine import fields as engine_fields

Field = dict[str, Any]
"""One description out of `engine.fields`: kind, meaning and, by kind, unit, low, high, options, item, …"""
Fields = dict[str, Field]


def record_names() -> dict[int, tuple[str, Fields]]:
    """Identity of a dict of fields → (its name, the dict), in the order of the catalogue.

    Requests and replies are called after their function (`MeltPlanRequest`), inner records after the field that holds
    them (`Oven`); two that would share a name take that of what holds them in front.
    """
    names: dict[int, tuple[str, Fields]] = {}
    for function, sides in engine_fields.FUNCTIONS.items():
        for side in ("request", "reply"):
            names.setdefault(id(sides[side]), (_pascal(function) + _pascal(side), sides[side]))
    for holder, fields in list(names.values()):
        _name_inner(holder, fields, names)
    return names


def sides() -> tuple[set[int], set[int]]:
    """Identities of the records that requests reach, and of those that replies reach."""
    asked: set[int] = set()
    answered: set[int] = set()
    for both in engine_fields.FUNCTIONS.values():
        _reach(both["request"], asked)
        _reach(both["reply"], answered)
    return asked, answered


def _reach(fields: Fields, reached: set[int]) -> None:
    if id(fields) in reached:
        return
    reached.add(id(fields))
    for field in fields.values():
        waiting = [field]
        while waiting:
            one = waiting.pop()
            waiting += one.get("alternatives", []) + ([one["item"]] if one["kind"] == "many" else [])
            if one["kind"] == "record":
                _reach(one["fields"], reached)


def _name_inner(holder: str, fields: Fields, names: dict[int, tuple[str, Fields]]) -> None:
    for name, field in fields.items():
        for wanted, inner in _inner_records(_pascal(name), field):
            if id(inner) in names:
                continue
            taken = {used for used, _ in names.values()}
            names[id(inner)] = (wanted if wanted not in taken else holder + wanted, inner)
            _name_inner(names[id(inner)][0], inner, names)


def _inner_records(name: str, field: Field) -> Iterator[tuple[str, Fields]]:
    if field["kind"] == "record":
        yield name, field["fields"]
    elif field["kind"] == "many":
        yield from _inner_records(_singular(name), field["item"])
    elif field["kind"] == "either":
        for alternative in field["alternatives"]:
            if alternative["kind"] == "record":
                first = next(iter(alternative["fields"]))
                yield name + "By" + _pascal(first.split("_")[0]), alternative["fields"]


def _pascal(name: str) -> str:
    return "".join(part.capitalize() for part in name.replace(".", "_").split("_"))


def _singular(name: str) -> str:
    if name.endswith("ches"):
        return name[:-2]
    return name[:-1] if name.endswith("s") else name
