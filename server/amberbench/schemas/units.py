"""Quantities in any usual unit, into SI: a number and the name of a unit, never an expression.

The engine's closed list comes first; after it any single unit name that Pint knows. Nothing is parsed by Pint but that
one name, looked up in its tables.
"""

import re
from functools import cache

import pint

from amberbench.engine.core import units as engine_units
from amberbench.engine.core.problems import Problem

NUMBER = r"[+-]?(?:[0-9]{1,20}(?:\.[0-9]{0,20})?|\.[0-9]{1,20})(?:[eE][+-]?[0-9]{1,3})?"
QUANTITY = re.compile(rf"\s*({NUMBER})\s*([^\s0-9+\-][^\s]{{0,30}}(?: [^\s]{{1,10}})?)?\s*", re.ASCII)
UNIT_NAME = re.compile(r"[A-Za-z_µ°]{1,31}", re.ASCII)
# Pint's words for the units of the engine's fields; they are ours, so Pint may parse them.
PINT_WORDS = {
    "°C": "degC",
    "J/(kg K)": "J/(kg*K)",
    "W/(m K)": "W/(m*K)",
    "W/(m² K)": "W/(m**2*K)",
    "m² K/W": "m**2*K/W",
    "m²": "m**2",
    "m²/s": "m**2/s",
    "m³": "m**3",
    "kg/m³": "kg/m**3",
}


def split(text: str) -> tuple[float, str] | None:
    """The number and the unit name in "2.5 lb"; the name is "" when there is none; None when it is no quantity."""
    match = QUANTITY.fullmatch(text)
    return None if match is None else (float(match[1]), match[2] or "")


def to_si(value: float, unit: str, wanted: str) -> float:
    """A value of some unit in the unit `wanted` of a field.

    Raises Problem `unknown_unit`, or `wrong_unit` when the two measure different things; both name what is accepted.
    """
    if unit == wanted:
        return value
    if unit == "%" and wanted == "":
        return value / 100.0
    if unit in engine_units.UNITS:
        if wanted in engine_units.UNITS and engine_units.UNITS[unit][0] == engine_units.UNITS[wanted][0]:
            return float(engine_units.convert(value, unit, wanted))
        raise Problem("unit", "wrong_unit", unit, accepted=accepted(wanted))
    return _by_pint(value, unit, wanted)


def accepted(wanted: str) -> list[str]:
    """The units of the closed list that measure the same as `wanted`; for others, `wanted` alone."""
    if wanted not in engine_units.UNITS:
        return [wanted or "%"]
    dimension = engine_units.UNITS[wanted][0]
    return [name for name, (other, _, _) in engine_units.UNITS.items() if other == dimension]


def _by_pint(value: float, unit: str, wanted: str) -> float:
    name = _unit_name(unit)
    if name is None:
        raise Problem("unit", "unknown_unit", unit, accepted=accepted(wanted))
    registry = _registry()
    target = registry.Unit(PINT_WORDS.get(wanted, wanted)) if wanted else registry.dimensionless
    # Pint would take a difference of temperatures for a temperature.
    if registry.Unit(name).dimensionality != target.dimensionality or name.startswith("delta_") or not wanted:
        raise Problem("unit", "wrong_unit", unit, accepted=accepted(wanted))
    try:
        return float(registry.Quantity(value, name).to(target).magnitude)
    except OverflowError:
        return float("inf")


def _unit_name(unit: str) -> str | None:
    """Pint's own name of a unit, by look-up in its tables: "pounds" → "pound"; None when it has none."""
    if not UNIT_NAME.fullmatch(unit):
        return None
    found = _registry().parse_unit_name(unit)
    return found[0][0] + found[0][1] if found else None


@cache
def _registry() -> "pint.UnitRegistry[float]":
    """Made at first need: it takes half a second."""
    return pint.UnitRegistry()
