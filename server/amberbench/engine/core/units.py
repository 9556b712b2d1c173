"""The closed list of units the engine knows, and exact conversion between them."""

from .problems import Problem

TYPE_CHECKING = False
if TYPE_CHECKING:
    from ..types import UnitsConvertReply, UnitsConvertRequest


# unit: (dimension, factor to SI, offset: SI = value * factor + offset). Exact by definition (NIST SP 811, B.8).
UNITS = {
    "g": ("mass", 0.001, 0.0),
    "kg": ("mass", 1.0, 0.0),
    "oz": ("mass", 0.45359237 / 16.0, 0.0),
    "lb": ("mass", 0.45359237, 0.0),
    "mm": ("length", 0.001, 0.0),
    "cm": ("length", 0.01, 0.0),
    "m": ("length", 1.0, 0.0),
    "in": ("length", 0.0254, 0.0),
    "°C": ("temperature", 1.0, 0.0),
    "°F": ("temperature", 1.0 / 1.8, -32.0 / 1.8),
    "ml": ("volume", 1e-6, 0.0),
    "l": ("volume", 1e-3, 0.0),
    "W": ("power", 1.0, 0.0),
    "s": ("time", 1.0, 0.0),
    "min": ("time", 60.0, 0.0),
    "h": ("time", 3600.0, 0.0),
}


def to_si(value: float, unit: str, field: str = "value") -> float:
    """A value in SI (°C for temperatures); Problem `unknown_unit` when the unit is not in the list."""
    if unit not in UNITS:
        raise Problem(field, "unknown_unit", unit, accepted=sorted(UNITS))
    _, factor, offset = UNITS[unit]
    return value * factor + offset


def convert(value: float, from_unit: str, to_unit: str) -> float:
    """A value in another unit of the same dimension.

    Raises Problem `unknown_unit`, or `wrong_unit` when the two units measure different things.
    Exact factors; source: NIST SP 811 (2008), appendix B.8.
    """
    si = to_si(value, from_unit, "from")
    if to_unit not in UNITS:
        raise Problem("to", "unknown_unit", to_unit, accepted=sorted(UNITS))
    dimension, factor, offset = UNITS[to_unit]
    if UNITS[from_unit][0] != dimension:
        same = sorted(unit for unit in UNITS if UNITS[unit][0] == UNITS[from_unit][0])
        raise Problem("to", "wrong_unit", to_unit, accepted=same)
    return (si - offset) / factor


def convert_request(request: "UnitsConvertRequest") -> "UnitsConvertReply":
    """A value in another unit of the same dimension.

    Request: value, from (its unit), to (the unit wanted), both of the list: g kg oz lb, mm cm m in, °C °F, ml l, W,
    min h s.
    Reply: value, in the unit wanted.
    Raises: Problem unknown_unit (from or to) and wrong_unit (to), with the units that would do.
    Relation: factors and offsets exact by definition; 1 lb is 0.45359237 kg, 1 in is 25.4 mm.
    Source: nist_sp811.
    """
    return {"value": convert(request["value"], request["from"], request["to"])}
